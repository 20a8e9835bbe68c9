const DAY_MILLISECONDS = 86_400_000;

/** 0 for Monday to 6 for Sunday. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** Days since 1 January 1970 of a `YYYY-MM-DD` day; dates compare and count as whole numbers. */
export function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / DAY_MILLISECONDS;
}

/** The `YYYY-MM-DD` day that `dayNumber` counts so. */
export function dateOfDay(day: number): string {
  return new Date(day * DAY_MILLISECONDS).toISOString().slice(0, 10);
}

/** Day 0, 1 January 1970, was a Thursday. */
export function weekdayOf(day: number): Weekday {
  return ((((day + 3) % 7) + 7) % 7) as Weekday;
}

/** Weeks begin on Monday, as RFC 5545 has it when nothing else is said. */
export function weekOf(day: number): number {
  return Math.floor((day + 3) / 7);
}

/** Months since January of the year 0. */
export function monthOf(day: number): number {
  const [year = 0, month = 1] = dateOfDay(day).split('-').map(Number);
  return year * 12 + month - 1;
}

/** The first day of a month counted by `monthOf`. */
export function firstOfMonth(month: number): number {
  return Date.UTC(Math.floor(month / 12), month % 12, 1) / DAY_MILLISECONDS;
}
