import type { Image, Paragraph, RootContent } from 'mdast';
import type { Drawing } from '../drawing/canvas.ts';
import { drawingFigure, type Figure, figuresTogether, pictureFigure } from '../drawing/figures.ts';
import { moveDrawing } from '../drawing/fold-move.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { pieceDrawing } from '../drawing/piece.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { flatNetDrawing } from '../drawing/template.ts';
import type { Prose, Step } from '../project/model.ts';
import { type Ref, readRef } from '../project/ref.ts';
import { netNamed } from '../shape/sheets.ts';
import { drawnBase, USUAL_VIEW, viewsOf } from '../shape/view/views.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';
import { COLUMN } from './column.ts';
import type { Hero } from './drawings.ts';
import { basesBySteps, layerFigures, stackCaption } from './layer-drawings.ts';
import { renderMarkdown } from './markdown.ts';
import { drawingOf, type ProseSetting, withoutHost } from './markdown-handlers.ts';
import { measuredText, shownText } from './measured-text.ts';
import { type Refer, referrer } from './references.ts';
import { drawnWays, type Setting, type Target } from './setting.ts';
import { oneARow, roomIn, type StepRooms } from './step-rooms.ts';
import { piecesToCome } from './to-come.ts';

/** More of them than this would make the column of figures longer than the text. */
const MOST_BESIDE = 2;
/** A step of more characters than this may break over two pages; in large type, one with fewer. */
const LONG = { usual: 1400, large: 300 };

/** No drawing that keeps to its room is so much wider for its margins and what is told under it. */
const MUCH_WIDER = 1.2;

/** @param hero the picture at the head of the sheet, which in print stands nowhere else. */
export function stepViews(setting: Setting, hero: Hero | undefined): readonly object[] {
  const bases = basesBySteps(setting, hero?.showsLayers ? 1 : 0);
  return setting.project.steps.map((step, index) => {
    const own = bases.filter((each) => each.step === index + 1).map(({ base }) => base);
    return stepView(setting, step, { number: index + 1, hero: hero?.photo, bases: own });
  });
}

/** The number of a step, and the bases whose layers are drawn in it. */
type StepPlace = {
  readonly number: number;
  readonly hero: string | undefined;
  readonly bases: readonly Ref[];
};

function stepView(setting: Setting, step: Step, { number, hero, bases }: StepPlace): object {
  const { voice } = setting;
  const blocks = shownBlocks(setting, step.prose, hero);
  const room = roomIn(setting, bases.length + blocks.filter(isFigure).length);
  const tried = layerFigures(setting, bases, room.layers);
  const rooms = tried.some(({ width }) => width > MUCH_WIDER * room.layers.width) ? oneARow(room) : room;
  const layers = rooms === room ? tried : layerFigures(setting, bases, rooms.layers);
  const told = step.prose.texts.map(({ value }) => value).join(' ');
  const prose = proseSetting(setting, 4, rooms, { told, toCome: piecesToCome(setting.project, number) });
  const { flow, beside } = parted(blocks, prose, setting.target);
  const text = renderMarkdown(flow, prose);
  const asked = step.prose.references.filter(({ view }) => view?.value === 'layers');
  return {
    number,
    id: `step-${number}`,
    title: renderMarkdown(step.heading, prose),
    time: step.minutes && voice.duration(step.minutes.value),
    dry: step.dry && voice.say('step-dry', { duration: voice.duration(step.dry.value) }),
    dryMinutes: step.dry?.value,
    ahead: step.ahead,
    text,
    figures: [...layers, ...beside].map(({ html }) => html),
    // Two such drawings and the text would be too high for a column.
    spread: layers.length + asked.length > 1,
    // Too long to be kept on one page.
    long: text.text.length > (setting.target === 'large-print' ? LONG.large : LONG.usual),
  };
}

/** The blocks that everybody sees, each picture one of its own; in print without the photo at the head. */
function shownBlocks({ target }: Setting, { nodes }: Prose, hero: string | undefined): RootContent[] {
  const blocks = withoutHost(nodes).flatMap(picturesApart);
  if (target === 'page' || hero === undefined) return blocks;
  return blocks.filter((block) => pictureIn(block)?.url !== hero);
}

/** Takes the figures out of the flow, if they are few; of those beside a text, the narrow ones. */
function parted(
  shown: readonly RootContent[],
  prose: ProseSetting,
  target: Target,
): { flow: readonly RootContent[]; beside: readonly Figure[] } {
  const found = new Map<RootContent, Figure>();
  for (const node of shown) {
    const figure = figureOf(node, prose);
    if (figure && (target === 'large-print' || figure.width <= COLUMN)) found.set(node, figure);
  }
  if (found.size > MOST_BESIDE) return { flow: shown, beside: [] };
  return { flow: shown.filter((node) => !found.has(node)), beside: [...found.values()] };
}

/** A paragraph broken where a picture stands in it. */
function picturesApart(node: RootContent): RootContent[] {
  if (node.type !== 'paragraph' || node.children.every(({ type }) => type !== 'image')) return [node];
  const paragraphs: Paragraph[] = [];
  for (const child of node.children) {
    const last = paragraphs.at(-1);
    const joins = last && child.type !== 'image' && last.children[0]?.type !== 'image';
    if (joins) last.children.push(child);
    else paragraphs.push({ type: 'paragraph', children: [child] });
  }
  return paragraphs;
}

function isFigure(node: RootContent): boolean {
  return node.type === 'leafDirective' || pictureIn(node) !== undefined;
}

/** The figure that a block is, and nothing else. */
function figureOf(node: RootContent, prose: ProseSetting): Figure | undefined {
  if (node.type === 'leafDirective') return drawingOf(node, prose);
  const picture = pictureIn(node);
  return picture && prose.picture(picture.url, picture.alt ?? '', picture.title ?? undefined);
}

/** The picture that a block is, and nothing else. */
function pictureIn(node: RootContent): Image | undefined {
  if (node.type !== 'paragraph') return undefined;
  const [only, ...others] = node.children;
  return only?.type === 'image' && others.length === 0 ? only : undefined;
}

/** How the Markdown of one step, or of the introduction, is set. Made anew for each: it remembers what was mentioned. */
export function proseSetting(
  setting: Setting,
  headings: ProseSetting['headings'] = 4,
  rooms: StepRooms = roomIn(setting, 1),
  beside: BesideDrawing = { told: '', toCome: new Set() },
): ProseSetting {
  const { project, voice, editions, measures, pictures, target } = setting;
  const refer = referrer(editions, measures, voice);
  const isPrint = target !== 'page';
  return {
    voice,
    source: project.file.text,
    headings,
    refer: isPrint ? listingScores(refer, voice) : refer,
    measured: (text) => measuredText(text, setting),
    draw: (of, view = USUAL_VIEW, caption) => stepDrawing(setting, rooms, { of, view, caption, ...beside }),
    picture: (path, alternative, caption) => {
      const picture = pictures.get(path);
      return picture && pictureFigure(picture, shownText(alternative, setting), caption);
    },
  };
}

/** On paper the scores stand in their list alone, in front of whoever reads a step. */
function listingScores(refer: Refer, { phrase }: Voice): Refer {
  return (kind, name) => {
    const said = refer(kind, name);
    return said && kind === 'scores' ? phrase('scores-listed', {}) : said;
  };
}

/** What stands before the first step: at the head of a page, and in print before the steps, where there is room. */
export function introductionOf(setting: Setting, hero: string | undefined): SafeHtml | undefined {
  const nodes = shownBlocks(setting, setting.project.introduction, hero);
  return nodes.length === 0 ? undefined : renderMarkdown(nodes, proseSetting(setting, 2));
}

/** What a step tells beside its drawings, and the pieces that only later steps speak of. */
type BesideDrawing = { readonly told: string; readonly toCome: ReadonlySet<string> };

/** A drawing that a step asks for. */
type AskedDrawing = BesideDrawing & {
  readonly of: string;
  readonly view: string;
  readonly caption: string | undefined;
};

/** The figure of `::drawing{of=box view=folded}`; undefined where there is no such view. */
function stepDrawing(setting: Setting, rooms: StepRooms, asked: AskedDrawing): Figure | undefined {
  const { of, view, caption } = asked;
  const ways = drawnWays(setting, (one) =>
    isOnSheet(one, of, view) ? undefined : drawingIn(one, rooms, asked),
  );
  // What is folded shows how it is done, which is the same whatever the size.
  const isMeasured = view === 'layers' || view === 'flat';
  const shown = isMeasured ? ways : ways.slice(0, 1);
  const base =
    view === 'layers' ? drawnBase(setting.editions[setting.measures.leading].shapes, readRef(of)) : undefined;
  const figures = shown.map(({ drawing, of: variant, one }) => {
    if (base && caption === undefined) return drawingFigure(drawing, stackCaption([base], one.voice));
    return drawingFigure(drawing, isMeasured ? captionOf(caption, variant) : caption);
  });
  return figuresTogether(figures);
}

/** In print every scored sheet is drawn once, as large as the page allows. */
function isOnSheet({ target, editions, measures }: Setting, of: string, view: string): boolean {
  const folds = netNamed(editions[measures.leading].shapes.nets, readRef(of))?.folds.length ?? 0;
  return target !== 'page' && view === 'flat' && folds > 0;
}

/** A caption, and the variants that a drawing is of. */
function captionOf(caption: string | undefined, of: string | undefined): string | undefined {
  return caption !== undefined && of !== undefined ? `${caption} (${of})` : (of ?? caption);
}

function drawingIn(
  setting: Setting,
  rooms: StepRooms,
  { of, view, told, toCome }: AskedDrawing,
): Drawing | undefined {
  const { editions, measures, drawings } = setting;
  const { shapes } = editions[measures.leading];
  const ref = readRef(of);
  if (!viewsOf(shapes, ref).includes(view)) return undefined;
  const base = view === 'layers' ? drawnBase(shapes, ref) : undefined;
  if (base) return stackDrawing(editions, base, rooms.layers, drawings);
  if (view === 'flat') return flatDrawing(setting, rooms, of);
  if (view === 'folded') return foldedDrawing(editions, of, view, rooms.shape, drawings, toCome);
  return moveDrawing(editions, of, view, rooms.shape, drawings, told);
}

/** A scored sheet as it lies on the table, or a flat piece with its dimensions. */
function flatDrawing(setting: Setting, { flat, shape }: StepRooms, of: string): Drawing | undefined {
  const { editions, measures, drawings } = setting;
  const net = netNamed(editions[measures.leading].shapes.nets, readRef(of));
  if (!net) return undefined;
  if (net.folds.length > 0) return flatNetDrawing(editions, of, flat, drawings);
  const { width, height } = net.size;
  const scale = Math.min(0.5, shape.width / width.mm, shape.height / height.mm);
  return pieceDrawing(editions, of, scale, drawings);
}
