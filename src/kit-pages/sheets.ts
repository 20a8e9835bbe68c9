import { drawingElement } from '../drawing/figures.ts';
import type { SheetLayout, StockPlan } from '../kit/plan.ts';
import { offcutsIn } from '../kit/sheet-tree.ts';
import { columnName } from '../shape/cells.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { cutPieceNamed, kindName, kindsCut } from './kinds.ts';
import { layoutDrawing } from './layout-drawing.ts';
import { type StepRow, stepRows } from './steps.ts';
import { joined, type KitWords } from './words.ts';

/** How a stock is cut: its layouts, one after another. */
type StockSection = {
  readonly id: string;
  readonly name: string;
  readonly color: string | undefined;
  readonly summary: SafeHtml;
  readonly upright: string | undefined;
  readonly layouts: readonly LayoutView[];
};

type LayoutView = {
  readonly heading: string;
  readonly drawing: SafeHtml;
  readonly pieces: readonly SafeHtml[];
  readonly steps: readonly StepRow[];
  readonly keep: SafeHtml | undefined;
  /** Too long to be kept on one page. */
  readonly isLong: boolean;
};

/** More steps would leave too much of the page before empty. Tried on Letter, in English. */
const MOST_STEPS = 5;

export function stockSections(plans: readonly StockPlan[], words: KitWords): readonly StockSection[] {
  return plans.map((plan, index) => ({
    id: `stock-${index + 1}`,
    name: typographic(plan.stock.name, words.voice.say),
    color: plan.stock.color?.value,
    summary: sheetsNeeded(plan, words),
    upright: uprightNote(plan, words),
    layouts: plan.layouts.map((layout, number) => layoutView(plan, layout, number + 1, words)),
  }));
}

/** `24 sheets 8½ × 11 in`; sizes apart where there are several. */
export function sheetsNeeded({ layouts }: StockPlan, words: KitWords): SafeHtml {
  const sheets = [...new Set(layouts.map(({ sheet }) => sheet))];
  return joined(
    sheets.map((sheet) => {
      const own = layouts.filter((layout) => layout.sheet === sheet);
      const count = own.reduce((sum, layout) => sum + layout.count, 0);
      const size = own[0] ? words.size(own[0].tree) : SafeHtml.empty;
      return html`${words.voice.count('kit-sheets', count)} ${size}`;
    }),
  );
}

function uprightNote({ stock }: StockPlan, { voice }: KitWords): string | undefined {
  if (stock.print?.value === 'upright') return voice.say('kit-keep-upright');
  return stock.grain && voice.say(stock.grain.value === 'width' ? 'kit-grain-width' : 'kit-grain-height');
}

function layoutView(plan: StockPlan, layout: SheetLayout, number: number, words: KitWords): LayoutView {
  const { voice } = words;
  const offcuts = offcutsIn(layout.tree);
  const steps = stepRows(layout, words);
  const of = plan.layouts.length;
  const sheets = voice.count('kit-cut-like-this', layout.count);
  return {
    heading: of === 1 ? sheets : voice.say('kit-layout', { number, of, sheets }),
    drawing: drawingElement(layoutDrawing(plan, layout, words)),
    pieces: piecesOf(plan, layout, words),
    steps,
    isLong: steps.length > MOST_STEPS,
    keep:
      offcuts.length > 0
        ? voice.phrase('kit-keep-offcuts', { sizes: joined(offcuts.map((box) => words.size(box))) })
        : undefined,
  };
}

/** What each sheet gives: `4 × A front, 3¼ × 4½ in`. */
function piecesOf(plan: StockPlan, layout: SheetLayout, words: KitWords): readonly SafeHtml[] {
  return kindsCut(plan, layout).map(({ kind, index, count }) =>
    words.voice.phrase('kit-each-sheet', {
      count,
      letter: columnName(index),
      piece: kindName(kind, words.voice),
      size: words.size(kind.size),
    }),
  );
}

/** Every piece by itself, for checking the piles at the end. */
type PieceRow = {
  readonly name: string;
  readonly size: SafeHtml;
  readonly stock: string;
  readonly perKit: number;
  readonly count: number;
};

export function pieceRows(plans: readonly StockPlan[], words: KitWords): readonly PieceRow[] {
  return plans.flatMap(({ stock, kinds }) =>
    kinds.flatMap(({ pieces }) =>
      pieces.map((piece) => ({
        name: cutPieceNamed(piece, words.voice),
        size: words.size(piece.size),
        stock: stock.name,
        perKit: piece.perKit,
        count: piece.perKit * piece.kits,
      })),
    ),
  );
}
