import type { Edition } from '../edition/editions.ts';
import { caliperOf } from '../shape/caliper.ts';
import { foldSteps } from '../shape/fold-order.ts';
import type { PaperSheet } from '../shape/paint/paper-sheet.ts';
import { sheetsOf } from '../shape/shapes.ts';
import { layersOnPanels } from '../shape/view/panel-layers.ts';
import { type PaperLook, paperOf } from '../shape/view/paper-of.ts';
import { colorOf } from './piece.ts';
import { tint } from './tint.ts';

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

/** The paper a piece is of and the layers on it, in the colors of their stocks. */
export function paperLook(edition: Edition, piece: string): PaperLook {
  const { project, shapes } = edition;
  const stock = project.stock.get(project.pieces.get(piece)?.stock?.value ?? '');
  const outside = tint(colorOf(edition, piece));
  return {
    caliper: caliperOf(stock).thickness.mm,
    outside,
    // A printed pattern is on one side of its paper.
    inside: stock?.print ? tint() : outside,
    layers: layersOnPanels(shapes, piece).map((layer) => ({
      ...layer,
      color: tint(colorOf(edition, layer.piece.id.value)),
    })),
  };
}

/**
 * JSON with numbers to four decimals: a sixteenth of an inch is 1.5875 mm, and a chain of folds adds up what is rounded
 * off.
 */
export function briefJson(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) =>
    typeof each === 'number' ? Math.round(each * 10_000) / 10_000 : each,
  );
}
