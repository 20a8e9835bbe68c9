import type { Drawing } from '../drawing/canvas.ts';
import { drawingElement } from '../drawing/figures.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { lowestBases } from '../drawing/pile.ts';
import { pictureElement } from '../drawing/placed-picture.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { templateDrawing, templateReduction } from '../drawing/template.ts';
import { briefJson, turnModel } from '../drawing/turn-model.ts';
import { caption } from '../drawing/words.ts';
import { ownEdition } from '../edition/editions.ts';
import type { Picture, Project } from '../project/model.ts';
import { readRef } from '../project/ref.ts';
import type { Net } from '../shape/net.ts';
import { netNamed, ownNet, sheetsOf } from '../shape/sheets.ts';
import { stepWords } from '../words/making-words.ts';
import { pieceNamed, sheetNamed } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { capital } from '../words/typographic.ts';
import { COLUMN } from './column.ts';
import { areaWidth } from './css.ts';
import { mainPiece } from './finished-size.ts';
import { basesBySteps, layerFigures } from './layer-drawings.ts';
import { sheetIds } from './piece-sheets.ts';
import { drawnWays, type Setting, type Target } from './setting.ts';

/** The picture at the head of a sheet: which photo it is, or whether it is the drawing of the first base's layers. */
export type Hero = { readonly html: SafeHtml; readonly photo?: string; readonly showsLayers?: true };

/** The photo a project is shown by: the one whose file is called `finished`, else the first. */
export function leadPhoto(project: Project): Picture | undefined {
  const prose = [project.introduction, ...project.steps.map((step) => step.prose)];
  const pictures = prose.flatMap((each) => each.pictures);
  return pictures.find(({ path }) => /(?:^|\/)finished\.\w+$/iu.test(path.value)) ?? pictures[0];
}

/**
 * A photo, else the folded shape drawn, else the layers; undefined where there is nothing of the kind. In large print
 * the layers stand in their step alone: beside a title their letters leave them no room.
 */
export function heroOf({ project, pictures, editions, drawings, target }: Setting): Hero | undefined {
  const photo = leadPhoto(project);
  const placed = photo && pictures.get(photo.path.value);
  if (photo && placed) {
    return { html: pictureElement(placed, photo.alternative), photo: photo.path.value };
  }
  const main = mainPiece(editions);
  const folds = main && ownNet(ownEdition(editions).shapes.nets, main.id.value)?.folds.length;
  const folded = main && folds && foldedDrawing(editions, main.id.value, 'folded', ROOM.hero, drawings);
  if (folded) return { html: drawingElement(folded) };
  if (target === 'large-print') return undefined;
  const [base] = lowestBases(editions);
  const drawing = base && stackDrawing(editions, base, ROOM.heroLayers, drawings);
  return drawing && { html: drawingElement(drawing), showsLayers: true };
}

/**
 * Room in millimeters: at the head of a sheet; for a template without its dimensions; for a stack, also in large print.
 */
const ROOM = {
  hero: { width: 54, height: 42 },
  heroLayers: { width: 66, height: 60 },
  template: { width: 140, height: 130 },
  /** Of several, so that two have room on a page. */
  templates: { width: 140, height: 84 },
  /** What is drawn at more than half its size. */
  overHalf: { width: 72, height: 80 },
  stack: { width: COLUMN, height: 70 },
  large: { width: 165, height: 100 },
  /** A page shows the picture as wide as its column. */
  turn: { width: 140, height: 98 },
};

/** Something scored, drawn as it is cut; a wide one runs across both columns of a print. */
type NetView = {
  readonly id: string;
  readonly heading: string;
  readonly drawing: SafeHtml;
  readonly isWide: boolean;
};

/** The template of everything that is scored, in every way that the variants have it. */
export function netViews(setting: Setting): readonly NetView[] {
  const { measures, editions } = setting;
  const { shapes } = editions[measures.leading];
  const ids = sheetIds(editions);
  const scored = ids.filter((id) => netNamed(shapes.nets, readRef(id))?.folds.length);
  const room = scored.length > 1 ? ROOM.templates : ROOM.template;
  const views = ids.flatMap((id) =>
    drawnWays(setting, ({ editions, drawings }) => {
      const net = netNamed(editions[measures.leading].shapes.nets, readRef(id));
      if (!net || net.folds.length === 0) return undefined;
      const least = Math.min(2, templateReduction(net, ROOM.overHalf));
      const reduction = Math.max(least, templateReduction(net, room));
      return firstFitting(netTries(setting.target, net, reduction), (each, widest) =>
        templateDrawing(editions, id, each, drawings, widest),
      );
    }).map(({ drawing, one: { voice } }) => ({
      heading: capital(voice.say('template-of', { piece: sheetNamed(id, voice.say) })),
      drawing: drawingElement(drawing),
      isWide: drawing.width > COLUMN,
    })),
  );
  return views.map((view, index) => ({ id: `net-${index + 1}`, ...view }));
}

/** A reduction, and the width that a drawing is to keep to, if to any. */
type NetTry = readonly [reduction: number, widest: number | undefined];

/** How a net may be drawn, best first: at a reduction, or at one of the next two where only those fit its column or page. */
function netTries(target: Target, net: Net, reduction: number): readonly NetTry[] {
  if (target === 'page') return [[reduction, undefined]];
  const whole = Math.floor(reduction);
  const reductions = [reduction, whole + 1, whole + 2];
  const across = reductions.map((each): NetTry => [each, areaWidth(target)]);
  if (target === 'large-print') return across;
  return [...(isPlain(net) ? reductions : [reduction]).map((each): NetTry => [each, COLUMN]), ...across];
}

/** As the first of some tries has it that keeps to its width, else as the last. */
function firstFitting(
  tries: readonly NetTry[],
  draw: (...each: NetTry) => Drawing | undefined,
): Drawing | undefined {
  let drawn: Drawing | undefined;
  for (const [reduction, widest] of tries) {
    drawn = draw(reduction, widest);
    if (drawn && drawn.width <= (widest ?? Number.POSITIVE_INFINITY) + 1e-6) break;
  }
  return drawn;
}

/** A fold or two from edge to edge: that is read at any size, and need not take both columns. */
function isPlain({ folds, waste, slits }: Net): boolean {
  return folds.length <= 2 && waste.length === 0 && slits.length === 0;
}

/** Every base with its layers that stands neither at the head nor in a step. */
export function layerViews(setting: Setting, hero: Hero | undefined): readonly SafeHtml[] {
  const room = setting.target === 'large-print' ? ROOM.large : ROOM.stack;
  const resting = basesBySteps(setting, hero?.showsLayers ? 1 : 0).filter(({ step }) => step === 0);
  const bases = resting.map(({ base }) => base);
  return layerFigures(setting, bases, room).map(({ html }) => html);
}

/** A folded piece on a page: a still picture, and what a script needs to turn and fold it in the picture's place. */
type TurnView = {
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

/** Every piece of which something is folded; none but on a page. */
export function turnViews(setting: Setting): readonly TurnView[] {
  if (setting.target !== 'page') return [];
  return [...setting.project.pieces.keys()].flatMap((piece) => {
    const ways = drawnWays(setting, (one) => flatTurn(one, piece));
    return ways.flatMap(
      ({ one }, index) => turnView(one, piece, index === 0 ? piece : `${piece}-${index + 1}`) ?? [],
    );
  });
}

function flatTurn({ editions, drawings }: Setting, piece: string): Drawing | undefined {
  return foldedDrawing(editions, piece, 'flat', ROOM.turn, drawings);
}

function turnView(one: Setting, piece: string, id: string): TurnView | undefined {
  const { editions, drawings, measures, voice } = one;
  const edition = editions[measures.leading];
  const model = turnModel(edition, piece);
  const folded = model && foldedDrawing(editions, piece, 'folded', ROOM.turn, drawings);
  const flat = model && flatTurn(one, piece);
  if (!folded || !flat) return undefined;
  const said = stepWords(sheetsOf(edition.shapes.nets, piece), voice);
  return {
    id,
    name: caption(piece, voice.say),
    caption: voice.say('turn-of', { piece: pieceNamed(piece, voice.say) }),
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
