import { drawingFigure, type Figure } from '../drawing/figures.ts';
import type { DrawingRoom } from '../drawing/piece.ts';
import { lowestBases } from '../drawing/pile.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { templateDrawing, templateReduction } from '../drawing/template.ts';
import { baseName, sheetNamed } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { pieceSheets } from './piece-sheets.ts';
import type { Setting } from './setting.ts';

/** The drawings of a sheet: rows of figures, and beside the only template the first stacks, if there is room. */
export type SheetDrawings = {
  readonly heading: string;
  readonly template: SafeHtml | undefined;
  readonly beside: readonly SafeHtml[];
  readonly others: readonly SafeHtml[];
};

/** Room in millimetres: for a template without its dimensions, for a stack beside one, for a stack in a row. */
const ROOM = {
  template: { width: 124, height: 105 },
  beside: { width: 27, height: 36 },
  inRow: { width: 30, height: 36 },
  large: { width: 84, height: 120 },
};
/** What a page has across, on A4, less the gap between two drawings; and how many stacks go above one another. */
const ACROSS = 170;
const MOST_BESIDE = 2;

/**
 * The template of everything scored, and every base with its layers but for the first `shown`, which stand elsewhere
 * already; undefined when nothing is left.
 */
export function sheetDrawings(setting: Setting, shown: number): SheetDrawings | undefined {
  const templates = templatesOf(setting);
  const [only, ...more] = templates;
  const heading = setting.voice.say(only ? 'template-and-layers' : 'layers');
  const large = setting.target === 'large-print';
  const narrow = large ? [] : stacksOf(setting, shown, ROOM.beside);
  const beside = narrow.slice(0, MOST_BESIDE);
  const across = Math.max(0, ...beside.map(({ width }) => width)) + (only?.width ?? 0);
  if (only && more.length === 0 && !large && across <= ACROSS) {
    return {
      heading,
      template: only.html,
      beside: beside.map(({ html }) => html),
      others: narrow.slice(MOST_BESIDE).map(({ html }) => html),
    };
  }
  const others = [...templates, ...stacksOf(setting, shown, large ? ROOM.large : ROOM.inRow)].map(
    ({ html }) => html,
  );
  return others.length > 0 ? { heading, template: undefined, beside: [], others } : undefined;
}

function templatesOf({ editions, drawings, voice, measures }: Setting): Figure[] {
  return pieceSheets(editions[measures.leading]).flatMap(({ id, net }) => {
    if (net.folds.length === 0) return [];
    const drawing = templateDrawing(editions, id, templateReduction(net, ROOM.template), drawings);
    const piece = sheetNamed(id, voice.say);
    return drawing ? [drawingFigure(drawing, voice.say('template-of', { piece }))] : [];
  });
}

function stacksOf({ editions, drawings, voice }: Setting, shown: number, room: DrawingRoom): Figure[] {
  return lowestBases(editions)
    .slice(shown)
    .flatMap((base) => {
      const drawing = stackDrawing(editions, base, room, drawings);
      const caption = voice.phrase('stack-of', { base: baseName(base, voice) });
      return drawing ? [drawingFigure(drawing, caption)] : [];
    });
}
