import { drawingElement } from '../drawing/figures.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { briefJson, turnModel } from '../drawing/turn-model.ts';
import { caption } from '../drawing/words.ts';
import { sheetsOf } from '../shape/shapes.ts';
import { nameOf } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { stepWords } from '../words/step-words.ts';
import type { Setting } from './setting.ts';

/** A folded piece on a page: a still picture, and what a script needs to turn and fold it in the picture's place. */
export type TurnView = {
  readonly id: string;
  readonly name: string;
  readonly caption: string;
  /** How many steps the folding takes. */
  readonly steps: number;
  readonly still: SafeHtml;
  /** What the picture shows, with its measurements, folded and flat. */
  readonly folded: string;
  readonly flat: string;
  /** JSON: a `TurnModel`, and `said`, what is done in each step. */
  readonly data: SafeHtml;
};

/** The still picture's room, in millimetres: a page shows it as wide as its column. */
const ROOM = { width: 140, height: 98 };

/** Every piece of which something is folded; none but on a page. */
export function turnViews(setting: Setting): readonly TurnView[] {
  if (setting.target !== 'page') return [];
  return [...setting.project.pieces.keys()].flatMap((piece) => turnView(setting, piece) ?? []);
}

function turnView({ editions, drawings, measures, voice }: Setting, piece: string): TurnView | undefined {
  const edition = editions[measures.leading];
  const model = turnModel(edition, piece);
  const folded = model && foldedDrawing(editions, piece, 'folded', ROOM, drawings);
  const flat = model && foldedDrawing(editions, piece, 'flat', ROOM, drawings);
  if (!folded || !flat) return undefined;
  const said = stepWords(sheetsOf(edition.shapes.nets, piece), voice);
  return {
    id: piece,
    name: caption(piece, voice.say),
    caption: voice.say('turn-of', { piece: nameOf(piece) }),
    steps: model.steps,
    still: drawingElement(folded),
    folded: folded.alternative,
    flat: flat.alternative,
    data: dataOf({ ...model, said }),
  };
}

/** JSON that cannot end the element it stands in: no `<` is left in it. */
function dataOf(value: unknown): SafeHtml {
  return SafeHtml.vouched(briefJson(value).replaceAll('<', '\\u003c'));
}
