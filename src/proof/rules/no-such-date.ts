import type { Rule } from '../rule.ts';

export const noSuchDate: Rule<{ readonly text: string }> = {
  severity: 'error',
  summary: 'Every date is a real date.',
  why: 'A session on 30 February would be left out of the calendar, and nobody would come.',
  fails: { head: 'session: 2027-02-30', blames: '2027-02-30' },
  passes: { with: '25', insteadOf: '30' },
  say: ({ text }) => ({
    message: `${text} is not a real date${reason(text)}`,
    remedy: 'write year-month-day, such as 2027-02-25',
  }),
};

/** Before it, a year of four digits is a slip of the hand. */
const FIRST_YEAR = 100;

function reason(text: string): string {
  const [year, month] = text.split('-').map(Number);
  if (year === undefined || month === undefined) return '';
  if (year < FIRST_YEAR) return `: the year ${text.slice(0, 4)} is long past`;
  if (!(month >= 1 && month <= 12)) return `: there is no month ${month}`;
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  return `: that month has ${days} days`;
}
