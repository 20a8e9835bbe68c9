import type { Piece } from '../project/model.ts';
import type { Cell } from '../project/net-as-written.ts';
import { cellName } from '../shape/cells.ts';
import { besideSlits, slantedPanels } from '../shape/cut-edges.ts';
import type { FlatPoint, GridCuts, Net } from '../shape/net.ts';
import type { Sheet } from '../shape/sheets.ts';
import { slitsWithin } from '../shape/slits-within.ts';
import { partName, pieceSheetNamed } from './names.ts';
import { html, SafeHtml } from './safe-html.ts';
import { capital } from './typographic.ts';
import type { Voice } from './voice.ts';

/**
 * What is cut once a piece is scored, as a list: what is cut away by its rows and columns, all else by the names of the
 * panels it is beside; of several sheets each under its name, and first, once, what a trimmer is no good for. Undefined
 * when nothing is.
 */
export function cuttingWords(
  { id, body }: Piece,
  sheets: readonly Sheet[],
  voice: Voice,
): SafeHtml | undefined {
  const cut = sheets.filter(({ net }) => net.folds.length > 0 && net.waste.length + net.slits.length > 0);
  if (cut.length === 0) return undefined;
  const hands = byHand(
    cut.map(({ net }) => net),
    voice,
  );
  const lists = cut.map(({ name, net }) => {
    const sheet = capital(pieceSheetNamed(id.value, name, voice.say));
    const heading =
      cut.length > 1 || name !== undefined
        ? html`<p class="list-head"><b class="piece">${sheet}</b></p>`
        : '';
    return html`${heading}${cutsOfOne(body, net, voice)}`;
  });
  return SafeHtml.join([...(hands.length > 0 ? [html`<p>${SafeHtml.join(hands, ' ')}</p>`] : []), ...lists]);
}

function cutsOfOne(body: Piece['body'], net: Net, voice: Voice): SafeHtml {
  const lines = linesOf(net, saidCuts(body, net), voice);
  const [only] = lines;
  if (lines.length < 2) return only ? html`<p>${only}</p>` : html``;
  return html`<ul class="said">${SafeHtml.join(lines.map((line) => html`<li>${line}</li>`))}</ul>`;
}

/** What is cut, of cells and of panels by their names. */
export type SaidCuts = Pick<GridCuts, 'slit'> & {
  readonly [Kind in 'trim' | 'taper' | 'shorten']: readonly (Cell | string)[];
};

/** What is cut, as a net by score lines has it written and a form on a grid has worked it out. */
export function saidCuts(body: Piece['body'], { cuts }: Net): SaidCuts | undefined {
  if (body.kind !== 'net') return cuts;
  const names = (cells: typeof body.trim): string[] => cells.map(({ value }) => value);
  return { trim: names(body.trim), slit: body.slit, taper: names(body.taper), shorten: [] };
}

function linesOf(net: Net, cuts: SaidCuts | undefined, voice: Voice): SafeHtml[] {
  const named = (parts: readonly (Cell | string)[]): SafeHtml =>
    voice.list(parts.map((part) => partName(net, typeof part === 'string' ? part : cellName(part), voice)));
  const { apart, straight } = besideSlits(net);
  const slanted = slantedPanels(net);
  return [
    ...(cuts ? [] : [voice.phrase('cut-as-drawn', {})]),
    ...(cuts && cuts.trim.length > 0 ? [voice.phrase('cut-away', { cells: named(cuts.trim) })] : []),
    ...apart.map((panels) => voice.phrase('cut-apart', { panels: named(panels) })),
    ...(cuts && cuts.shorten.length > 0 ? [voice.phrase('cut-shorter', { cells: named(cuts.shorten) })] : []),
    ...besideAndSlanted(straight, slanted, named, voice),
  ];
}

/** `Cut straight beside front bottom, at a slant on left bottom`, or what there is of it. */
function besideAndSlanted(
  straight: readonly string[],
  slanted: readonly string[],
  named: (panels: readonly string[]) => SafeHtml,
  voice: Voice,
): SafeHtml[] {
  if (slanted.length === 0)
    return straight.length > 0 ? [voice.phrase('cut-straight', { straight: named(straight) })] : [];
  const words = { straight: named(straight), slanted: named(slanted) };
  return [voice.phrase(straight.length > 0 ? 'cut-straight-and-slanted' : 'cut-slanted', words)];
}

/** What a trimmer, which cuts from edge to edge, is no good for: a cut from an edge; one that scissors don't get into. */
function byHand(nets: readonly Net[], voice: Voice): SafeHtml[] {
  const within = nets.flatMap(slitsWithin);
  const isEnding = nets.some(
    (net) =>
      net.slits.some((slit) => !within.includes(slit)) || net.waste.some((part) => endsInside(part, net)),
  );
  return [
    ...(isEnding ? [voice.phrase('slit-by-hand', {})] : []),
    ...(within.length > 0 ? [voice.phrase('slit-by-knife', {})] : []),
  ];
}

/** Whether cutting a part away takes more than one cut from edge to edge of the sheet. */
function endsInside(part: Waste, { size: { width, height }, waste }: Net): boolean {
  const isEdge = (from: FlatPoint, to: FlatPoint): boolean =>
    (from.x.equals(to.x) && (to.x.sign === 0 || to.x.equals(width))) ||
    (from.y.equals(to.y) && (to.y.sign === 0 || to.y.equals(height)));
  const isShared = (...ends: readonly FlatPoint[]): boolean =>
    waste.some((other) => other !== part && ends.every((end) => hasCorner(other, end)));
  const cuts = part.filter((from, index) => {
    const to = part[(index + 1) % part.length] ?? from;
    return !isEdge(from, to) && !isShared(from, to);
  });
  return cuts.length > 1;
}

type Waste = Net['waste'][number];

function hasCorner(part: Waste, { x, y }: FlatPoint): boolean {
  return part.some((corner) => corner.x.equals(x) && corner.y.equals(y));
}
