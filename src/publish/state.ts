import { toString as textOf } from 'mdast-util-to-string';
import type { Length } from '../measure/length.ts';
import { printDecimal, printLength, printSize, rulerInches } from '../measure/print.ts';
import type { PublishedState } from '../project/ledger.ts';
import type { Piece, Project, Step } from '../project/model.ts';
import type { Net } from '../shape/net.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';
import { nameOf } from '../words/names.ts';

/**
 * Everything of a project that a person who printed it would want to know has changed: what is cut, scored, stuck
 * where, and what the steps say. In the unit the project is written in.
 */
export function stateOf(project: Project, shapes: Shapes): PublishedState {
  const entries = [...project.pieces.values()].flatMap((piece) => pieceEntries(piece, project, shapes));
  return { measurements: Object.fromEntries(entries), steps: project.steps.map(stepState) };
}

type Entry = readonly [name: string, value: string];

function pieceEntries(piece: Piece, project: Project, { nets, layers }: Shapes): Entry[] {
  const id = piece.id.value;
  const name = nameOf(id);
  const layer = layers.find((each) => each.piece === piece);
  const stock = piece.stock && (project.stock.get(piece.stock.value)?.name ?? piece.stock.value);
  return [
    ...sheetsOf(nets, id).flatMap(({ name: part, net }) =>
      netEntries(part === undefined ? name : `${name} ${nameOf(part)}`, net, project),
    ),
    ...(piece.corners ? [[`${name}: corners`, print(piece.corners.value, project)] as const] : []),
    ...(piece.count.value > 1 ? [[`${name}: pieces`, String(piece.count.value)] as const] : []),
    ...(stock === undefined ? [] : [[`${name}: paper`, stock] as const]),
    ...(layer ? [[`${name}: place`, placeOf(layer, project)] as const] : []),
  ];
}

function netEntries(name: string, net: Net, project: Project): Entry[] {
  const scores = net.scores.map(
    ({ from, at }): Entry => [
      `${name}: scores from ${from}`,
      at.map((position) => print(position, project)).join(', '),
    ],
  );
  return [[name, sizeText(net, project)], ...scores];
}

function placeOf({ baseName, left, top, turn }: Shapes['layers'][number], project: Project): string {
  const turned = turn === 0 ? '' : `, turned ${turn}°`;
  return `on ${baseName}, ${print(left, project)} from the left and ${print(top, project)} from the top${turned}`;
}

function sizeText({ size }: Net, project: Project): string {
  const exact = [size.width, size.height].every((length) => isPrintable(length, project));
  if (exact) return printSize(size, project.unit === 'in' ? 'in' : 'mm', 'set');
  return `${print(size.width, project)} × ${print(size.height, project)}`;
}

/** Exact, whatever the length: two different lengths must never read the same. */
function print(length: Length, project: Project): string {
  const unit = project.unit === 'in' ? 'in' : 'mm';
  return isPrintable(length, project)
    ? printLength(length, unit, 'set')
    : `${printDecimal(length, unit, 4)} ${unit}`;
}

function isPrintable(length: Length, { unit }: Project): boolean {
  return unit === 'in' ? rulerInches(length).exact : 2n % length.in('mm').denominator === 0n;
}

/** The words of a step, its measurements' names included, without what only formatting changes. */
function stepState(step: Step): PublishedState['steps'][number] {
  const { title, minutes, ahead, dry, prose } = step;
  const facts = [
    minutes ? `${minutes.value} min` : '',
    ahead ? 'ahead' : '',
    dry ? `dry ${dry.value} min` : '',
  ].filter(Boolean);
  const said = prose.nodes.filter(isShown).map((node) => textOf(node));
  const words = [...facts, ...said, ...prose.references.map(({ kind, name }) => `${kind} ${name.value}`)];
  return { title: title.value, words: words.join(' ').replace(/\s+/gu, ' ').trim() };
}

/** What only the demonstrator reads is on no sheet. */
function isShown(node: Step['prose']['nodes'][number]): boolean {
  return !(node.type === 'containerDirective' && node.name === 'host');
}
