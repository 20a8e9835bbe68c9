import type { Piece } from '../project/model.ts';
import type { Cell } from '../project/net-as-written.ts';
import { parseCell } from '../shape/cells.ts';
import { foldNet } from '../shape/fold.ts';
import { type FoldStep, foldSteps } from '../shape/fold-order.ts';
import { forms } from '../shape/forms/index.ts';
import type { FlatPoint, GridCuts, Net } from '../shape/net.ts';
import { panelForest } from '../shape/panel-tree.ts';
import type { Sheet } from '../shape/shapes.ts';
import { closingKey } from './form-words.ts';
import { partName, partNamed } from './names.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/**
 * What is cut once a piece is scored, as a list: cells cut away, slits, tapers; of several sheets each under its name,
 * and first, once, what a trimmer is no good for. Undefined when nothing is.
 */
export function cuttingWords({ body }: Piece, sheets: readonly Sheet[], voice: Voice): SafeHtml | undefined {
  const cut = sheets.filter(({ net }) => net.folds.length > 0 && net.waste.length + net.slits.length > 0);
  if (cut.length === 0) return undefined;
  const hands = byHand(
    cut.map(({ net }) => net),
    voice,
  );
  const lists = cut.map(({ name, net }) => {
    const heading = name === undefined ? '' : html`<p><b class="piece">${partNamed(name, voice.say)}</b></p>`;
    return html`${heading}${cutsOfOne(body, net, voice)}`;
  });
  return SafeHtml.join([...(hands.length > 0 ? [html`<p>${SafeHtml.join(hands, ' ')}</p>`] : []), ...lists]);
}

function cutsOfOne(body: Piece['body'], net: Net, voice: Voice): SafeHtml {
  const cuts = saidCuts(body, net);
  const lines = cuts ? linesOf(cuts, voice) : [voice.phrase('cut-as-drawn', {})];
  const [only] = lines;
  if (only && lines.length === 1) return html`<p>${only}</p>`;
  return html`<ul class="said">${itemsOf(lines)}</ul>`;
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

function linesOf({ trim, slit, taper, shorten }: SaidCuts, voice: Voice): SafeHtml[] {
  return [
    ...(trim.length + slit.length > 0 ? [voice.phrase('cut-count', {})] : []),
    ...(trim.length > 0 ? [voice.phrase('cut-away', { cells: cellsByRow(trim, voice) })] : []),
    ...slitLines(slit, voice),
    ...(shorten.length > 0 ? [voice.phrase('cut-shorter', { cells: cellsByRow(shorten, voice) })] : []),
    ...(taper.length > 0 ? [voice.phrase('cut-taper', { cells: cellsByRow(taper, voice) })] : []),
  ];
}

/** `row 1, columns 1, 3 and 5; row 2, column 5; tab`. */
function cellsByRow(cells: readonly (Cell | string)[], voice: Voice): SafeHtml {
  const rows = new Map<number, number[]>();
  const named: SafeHtml[] = [];
  for (const part of cells) {
    const cell = typeof part === 'string' ? parseCell(part) : part;
    if (!cell) named.push(html`<b class="piece">${partNamed(String(part), voice.say)}</b>`);
    else rows.set(cell.row, [...(rows.get(cell.row) ?? []), cell.column + 1]);
  }
  const inRows = [...rows].map(([row, columns]) =>
    voice.phrase(columns.length === 1 ? 'cells-one' : 'cells-other', {
      row: row + 1,
      columns: voice.list(columns),
    }),
  );
  return SafeHtml.join([...inRows, ...named], '; ');
}

/** Slits through the same rows are said together. */
function slitLines(slits: GridCuts['slit'], voice: Voice): SafeHtml[] {
  const groups = new Map<string, GridCuts['slit'][number][]>();
  for (const slit of slits) {
    const key = `${slit.between} ${slit.from} ${slit.to}`;
    groups.set(key, [...(groups.get(key) ?? []), slit]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { between, from, to } = first;
    const pairs = group.map(({ line }) =>
      voice.phrase(`slit-pair-${between}`, { one: line + 1, other: line + 2 }),
    );
    const along = group.length === 1 ? 'slit-single' : 'slit-several';
    const through = from === to ? 'slit-one' : 'slit-other';
    const lines = voice.phrase(along, { pairs: voice.list(pairs) });
    const rest = { from: from + 1, to: to + 1, lines };
    return [voice.phrase(`${through}-${between}`, rest)];
  });
}

/** What a trimmer, which cuts from edge to edge, is no good for: a cut from an edge; one that scissors don't get into. */
function byHand(nets: readonly Net[], voice: Voice): SafeHtml[] {
  const slits = nets.flatMap((net) => net.slits.map(({ from, to }) => isOpen(net, from) || isOpen(net, to)));
  const isEnding =
    slits.includes(true) || nets.some((net) => net.waste.some((part) => endsInside(part, net)));
  return [
    ...(isEnding ? [voice.phrase('slit-by-hand', {})] : []),
    ...(slits.includes(false) ? [voice.phrase('slit-by-knife', {})] : []),
  ];
}

/** Whether scissors get in at a point: on the edge of the sheet, or of what was cut away. */
function isOpen({ size, waste }: Net, point: FlatPoint): boolean {
  const { x, y } = point;
  const isOnEdge = x.sign === 0 || y.sign === 0 || x.equals(size.width) || y.equals(size.height);
  return isOnEdge || waste.some((part) => hasCorner(part, point));
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

/** What sticks to what, in order, and how a ready-made form is closed. Undefined for a piece that is neither. */
export function assemblyWords({ body }: Piece, sheets: readonly Sheet[], voice: Voice): SafeHtml | undefined {
  const glued = sheets.flatMap(({ net }) =>
    net.glue.map(({ from, to }) =>
      voice.phrase('stick', { from: partName(net, from, voice), to: partName(net, to, voice) }),
    ),
  );
  const form = body.kind === 'form' ? forms.find(({ name }) => name === body.form.value) : undefined;
  const lines = [...glued, ...(form ? [html`${voice.say(closingKey(form))}`] : [])];
  if (lines.length === 0) return undefined;
  return html`<ol class="said">${itemsOf(lines)}</ol>`;
}

function itemsOf(lines: readonly SafeHtml[]): SafeHtml {
  return SafeHtml.join(lines.map((line) => html`<li>${line}</li>`));
}

/** More panels than this are counted, not named. */
const MOST_NAMED = 4;
/** Folds of fewer degrees than this bend a panel that is made of strips. */
const BEND = 30;

/** What is done in each step of folding some sheets one after another: `Step 2 of 6: fold left bottom and right bottom`. */
export function stepWords(sheets: readonly Sheet[], voice: Voice): readonly string[] {
  const steps = sheets.flatMap(({ name, net }) => foldSteps(net).map((step) => ({ name, net, step })));
  return steps.map(({ name, net, step }, index) => {
    const turn = voice.say(isBend(step) ? 'turn-bend' : 'turn-fold', { parts: partsOf(net, step, voice) });
    const place = { step: index + 1, count: steps.length, turn };
    return name === undefined
      ? voice.say('turn-step', place)
      : voice.say('turn-step-of', { ...place, sheet: partNamed(name, voice.say) });
  });
}

function isBend({ folds }: FoldStep): boolean {
  return folds.every(({ angle }) => angle < BEND);
}

/** The panels that are turned, in words. */
function partsOf(net: Net, { folds }: FoldStep, voice: Voice): string {
  const shape = foldNet(net, { at: 0 });
  const joints = panelForest(shape.net, shape.base).trees.flatMap((tree) => tree.joints);
  const turned = joints
    .filter(({ fold }) => folds.includes(fold))
    .map(({ child }) => shape.net.panels.find(({ id }) => id === child)?.partOf ?? child);
  const names = [...new Set(turned)].map((id) => partName(net, id, voice).text);
  // `row 1, column 2` has a comma of its own.
  const between = names.some((name) => name.includes(',')) ? '; ' : ', ';
  if (names.length > MOST_NAMED) {
    const named = names.slice(0, MOST_NAMED - 1);
    return voice.say('turn-more', { parts: named.join(between), count: names.length - named.length });
  }
  return between === ', ' ? voice.list(names).text : names.join(between);
}
