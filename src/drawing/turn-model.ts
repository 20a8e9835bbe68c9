import type { Edition } from '../edition/editions.ts';
import { roundDecimals } from '../measure/round.ts';
import { foldSteps } from '../shape/fold-order.ts';
import type { PaperSheet } from '../shape/paint/paper-sheet.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { paperOf } from '../shape/view/paper-of.ts';
import { paperLook } from './seen-paper.ts';

/** A folded piece as a page's script turns and folds it: plain data, ready for JSON. */
export type TurnModel = {
  /** One sheet, but for a form of several: they are shown side by side and folded one after another. */
  readonly sheets: readonly PaperSheet[];
  /** How many steps the folding takes, all sheets together. */
  readonly steps: number;
};

/** A piece to be turned and folded; undefined when it has no net or nothing on it is folded. */
export function turnModel(edition: Edition, piece: string): TurnModel | undefined {
  const look = paperLook(edition, piece);
  const sheets: PaperSheet[] = [];
  let steps = 0;
  for (const { net } of sheetsOf(edition.shapes.nets, piece)) {
    sheets.push(paperOf(net, look, steps));
    steps += foldSteps(net).length;
  }
  return steps > 0 ? { sheets, steps } : undefined;
}

/**
 * JSON with numbers to four decimals: a sixteenth of an inch is 1.5875 mm, and a chain of folds adds up what is rounded
 * off.
 */
export function briefJson(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) =>
    typeof each === 'number' ? roundDecimals(each, 4) : each,
  );
}
