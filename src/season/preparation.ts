import type { CutPiece, NamedSheets, PlannedSession, StockPlan } from '../kit/plan.ts';
import type { ShoppingLine } from '../kit/shopping/line.ts';
import { dateOfDay, dayNumber } from '../project/schedule.ts';
import type { Stock } from '../project/stock.ts';
import type { SeasonSession } from './session.ts';

/** So many sheets of a layout, by its place in the plan of its stock. */
export type SheetsDue = { readonly stock: Stock; readonly layout: number; readonly count: number };

/** So many pieces of one kind that an earlier cut has put aside, or puts aside for a later session. */
export type PiecesKept = { readonly piece: CutPiece; readonly count: number };

/** Something to have done by a day. */
export type Preparation = {
  /** `YYYY-MM-DD`. */
  readonly date: string;
} & (
  | { readonly kind: 'buy'; readonly lines: readonly ShoppingLine[] }
  | {
      readonly kind: 'cut';
      readonly session: PlannedSession;
      readonly sheets: readonly SheetsDue[];
      /** Pieces of this session that were cut with an earlier one, and those of later ones that are cut now. */
      readonly taken: readonly PiecesKept[];
      readonly kept: readonly PiecesKept[];
    }
  | {
      /** Steps to be done before the session. */
      readonly kind: 'ahead';
      readonly session: PlannedSession;
      readonly steps: readonly { readonly title: string; readonly dry: number }[];
    }
  | { readonly kind: 'meet'; readonly session: PlannedSession; readonly attendees: number }
);

/** Days before the first cut by which everything is bought, and before a session by which all is cut. No source. */
const DAYS = { buy: 7, cut: 1 } as const;

const MINUTES_A_DAY = 24 * 60;

/** What is to be done, in the order of the days; on one day in the order in which it is done. */
export function preparationsOf(
  sessions: readonly SeasonSession[],
  stocks: readonly StockPlan[],
  shopping: readonly ShoppingLine[],
): readonly Preparation[] {
  const [first] = sessions;
  if (!first) return [];
  const due = sheetsDue(sessions, stocks);
  const preparations = sessions.flatMap((each) => [
    ...cutFor(each, due),
    ...aheadOf(each),
    { kind: 'meet', date: each.session.date, session: each.session, attendees: each.attendees } as const,
  ]);
  const [begun = first.session.date] = preparations.map(({ date }) => date).sort();
  const lines = shopping.filter(({ toGet }) => !toGet?.value.equals(0n));
  const buy = lines.length > 0 ? [{ kind: 'buy', date: daysBefore(begun, DAYS.buy), lines } as const] : [];
  const order = ['buy', 'cut', 'ahead', 'meet'];
  return [...buy, ...preparations].toSorted((a, b) =>
    a.date === b.date ? order.indexOf(a.kind) - order.indexOf(b.kind) : a.date < b.date ? -1 : 1,
  );
}

function daysBefore(date: string, days: number): string {
  return dateOfDay(dayNumber(date) - days);
}

/** Sheets that give the same pieces, and the session they have to be cut for: the first that is cut for. */
type CutDue = NamedSheets & Omit<SheetsDue, 'count'> & { readonly session: PlannedSession | undefined };

function sheetsDue(sessions: readonly SeasonSession[], stocks: readonly StockPlan[]): readonly CutDue[] {
  const inOrder = sessions.toSorted((a, b) => (cutDay(a) < cutDay(b) ? -1 : cutDay(a) > cutDay(b) ? 1 : 0));
  const firstOf = (pieces: readonly CutPiece[]): PlannedSession | undefined =>
    inOrder.find(({ session }) => pieces.some((piece) => piece.session === session))?.session;
  return stocks.flatMap(({ stock, layouts }) =>
    layouts.flatMap(({ named }, layout) =>
      named.map((sheets) => ({ ...sheets, stock, layout, session: firstOf(sheets.pieces) })),
    ),
  );
}

/** By the day before; on the day of the steps ahead, where those begin earlier. */
function cutDay(making: SeasonSession): string {
  return daysBefore(making.session.date, Math.max(DAYS.cut, daysAhead(making)));
}

function cutFor(making: SeasonSession, all: readonly CutDue[]): readonly Preparation[] {
  const { session } = making;
  const due = all.filter((each) => each.session === session);
  const sheets = new Map<string, SheetsDue>();
  for (const { stock, layout, count } of due) {
    const key = `${stock.id.value} ${layout}`;
    sheets.set(key, { stock, layout, count: count + (sheets.get(key)?.count ?? 0) });
  }
  const earlier = all.filter((each) => each.session !== session);
  const taken = piecesOf(earlier, (piece) => piece.session === session);
  const kept = piecesOf(due, (piece) => piece.session !== session);
  if (sheets.size === 0 && taken.length === 0) return [];
  return [{ kind: 'cut', date: cutDay(making), session, sheets: [...sheets.values()], taken, kept }];
}

function piecesOf(
  sheets: readonly { readonly count: number; readonly pieces: readonly CutPiece[] }[],
  isMeant: (piece: CutPiece) => boolean,
): readonly PiecesKept[] {
  const counts = new Map<string, PiecesKept>();
  for (const { count, pieces } of sheets)
    for (const piece of pieces.filter(isMeant))
      counts.set(piece.name, { piece, count: count + (counts.get(piece.name)?.count ?? 0) });
  return [...counts.values()];
}

/** Steps that are done before the session, on a day that leaves them time to dry. */
function aheadOf(making: SeasonSession): readonly Preparation[] {
  const { project, session } = making;
  const steps = project.steps
    .filter(({ ahead }) => ahead)
    .map(({ title, dry }) => ({ title: title.value, dry: dry?.value ?? 0 }));
  if (steps.length === 0) return [];
  return [{ kind: 'ahead', date: daysBefore(session.date, daysAhead(making)), session, steps }];
}

/** How many days before a session its steps ahead are done: the day before, and one more for each day of drying. */
function daysAhead({ project }: SeasonSession): number {
  const ahead = project.steps.filter((step) => step.ahead);
  const drying = ahead.reduce((sum, { dry }) => sum + (dry?.value ?? 0), 0);
  return ahead.length > 0 ? 1 + Math.floor(drying / MINUTES_A_DAY) : 0;
}
