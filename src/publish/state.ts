import { toString as textOf } from 'mdast-util-to-string';
import { type Edition, type Editions, ownEdition, shownEditions } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { areAll, namesOf, type RoundedCorners } from '../project/corners.ts';
import type {
  PublishedFact,
  PublishedState,
  PublishedThing,
  PublishedValue,
} from '../project/ledger/ledger.ts';
import type { Step } from '../project/model.ts';
import { writeRef } from '../project/ref.ts';
import type { Layer, Shapes } from '../shape/shapes.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { nameOf } from '../words/names.ts';
import { variantsOf } from '../words/variants.ts';
import { netFacts } from './net-facts.ts';

/**
 * Everything of a project that a person who printed it would want to know has changed: what is cut, scored, stuck
 * where, in each edition that is printed, and what the steps say.
 */
export function stateOf(editions: Editions): PublishedState {
  const variants = variantsOf(editions);
  const settled = variants.flatMap(settledIn);
  return {
    pieces: joinVariants(variants),
    steps: ownEdition(editions).project.steps.map(stepState),
    ...(settled.length > 0 && { settled }),
  };
}

/** By piece and kind, in rows. */
function settledIn(editions: Editions): NonNullable<PublishedState['settled']> {
  const { project } = ownEdition(editions);
  const variant = project.variant?.id.value;
  const pieces = [...new Set(editions.settled.map(({ piece }) => piece))];
  const rows = pieces.flatMap((piece) => (['part', 'place'] as const).map((kind) => ({ piece, kind })));
  return rows.flatMap(({ piece, kind }) => {
    const all = editions.settled.filter((each) => each.piece === piece && each.kind === kind);
    if (all.length === 0) return [];
    const [inch, metric] = [all.map((each) => each.inch), all.map((each) => each.metric)];
    const use = project.pieces.get(piece)?.use?.value;
    const whose = { piece, ...(use !== undefined && { use }), ...(variant !== undefined && { variant }) };
    return { ...whose, kind, inch, metric };
  });
}

/** Each fact once where all variants have it alike, else of each variant that has it, in the order of the sheet. */
function joinVariants(variants: readonly Editions[]): readonly PublishedFact[] {
  const [only, ...more] = variants;
  if (only && more.length === 0) return factsOfBoth(only);
  const all = variants.map((variant) => {
    const name = ownEdition(variant).project.variant?.id.value;
    return { name, facts: new Map(factsOfBoth(variant).map((fact) => [keyOf(fact), fact])) };
  });
  const keys = new Set(all.flatMap(({ facts }) => [...facts.keys()]));
  return [...keys].flatMap((key) => {
    const each = all.flatMap(({ name, facts }) => {
      const fact = facts.get(key);
      return fact ? [{ fact, name }] : [];
    });
    const [first, ...others] = each;
    const isCommon =
      each.length === all.length && others.every(({ fact }) => first && isSame(fact, first.fact));
    return isCommon && first ? [first.fact] : each.map(({ fact, name }) => ({ ...fact, variant: name }));
  });
}

function factsOfBoth(editions: Editions): readonly PublishedFact[] {
  const { inch, metric, printed } = editions;
  const [leading] = shownEditions(editions);
  const other = leading === 'inch' ? 'metric' : 'inch';
  // Of a project with an error, the one as written stands in the place of both.
  const others = printed === 'both' && inch !== metric ? factsOf(editions[other], other) : [];
  const twins = new Map(others.map((fact) => [keyOf(fact), fact]));
  return factsOf(editions[leading], leading).map((fact) => ({ ...twins.get(keyOf(fact)), ...fact }));
}

/** Tells one thing from all others. A sheet is named as it always was in ledgers: `box lid`. */
export function keyOf(thing: PublishedThing): string {
  return [sheetKey(thing), thing.what, thing.from ?? ''].join(': ');
}

export function sheetKey({ piece, sheet, variant }: PublishedThing): string {
  const name = nameOf(sheet === undefined ? piece : `${piece} ${sheet}`);
  return variant === undefined ? name : `${name} (${variant})`;
}

/** Alike in each edition that both know. */
export function isSame(a: PublishedValue, b: PublishedValue): boolean {
  const known = (['inch', 'metric'] as const).filter((edition) => a[edition] && b[edition]);
  const areKnown = known.length > 0 || !(a.inch ?? a.metric ?? b.inch ?? b.metric);
  return (
    a.word === b.word &&
    a.turn === b.turn &&
    a.count === b.count &&
    areKnown &&
    known.every((edition) => areSame(actedOn(a, b, edition), actedOn(b, a, edition)))
  );
}

/** The lengths that somebody goes by: not how far from an edge it is where it lies centered as it did before. */
function actedOn(value: PublishedValue, other: PublishedValue, edition: EditionName): readonly Length[] {
  const isCentered = (way: 'across' | 'upright'): boolean =>
    [value, other].every(({ centered }) => centered === 'both' || centered === way);
  const skipped = [isCentered('across'), isCentered('upright')];
  return (value[edition] ?? []).filter((_, index) => !skipped[index]);
}

/** Nobody cuts by less; early ledgers recorded lengths that no ruler has with four decimals of an inch. */
const HAIR = Length.of(1, 500, 'mm');

function areSame(a: readonly Length[], b: readonly Length[]): boolean {
  const isNear = (one: Length, other = one): boolean => one.minus(other).abs().lessThan(HAIR);
  return a.length === b.length && a.every((length, index) => isNear(length, b[index]));
}

function factsOf({ project, shapes }: Edition, edition: EditionName): PublishedFact[] {
  return [...project.pieces.values()].flatMap((piece): PublishedFact[] => {
    const id = piece.id.value;
    const { corners, count } = piece;
    const layer = shapes.layers.find((each) => each.piece === piece);
    const stock = piece.stock && (project.stock.get(piece.stock.value)?.name ?? piece.stock.value);
    return [
      ...sheetsOf(shapes.nets, id).flatMap(({ name, net }) =>
        netFacts({ piece: id, sheet: name }, net, piece, edition),
      ),
      ...decorationFacts(id, shapes.nets, edition),
      ...(corners ? [cornersFact(id, corners, edition)] : []),
      ...(count.value > 1 ? [{ piece: id, what: 'pieces', word: String(count.value) } as const] : []),
      ...(stock === undefined ? [] : [{ piece: id, what: 'paper', word: stock } as const]),
      ...(layer ? [placeFact(id, layer, edition)] : []),
    ];
  });
}

/** One radius of all corners, or the names of some and the radius of each. */
function cornersFact(piece: string, rounded: RoundedCorners, edition: EditionName): PublishedFact {
  const radii = rounded.flatMap(({ corners, radius }) =>
    (areAll(corners) ? [undefined] : namesOf(corners)).map((name) => ({ name, radius: radius.value })),
  );
  const word = radii.flatMap(({ name }) => name ?? []).join(', ');
  return { piece, what: 'corners', ...(word && { word }), [edition]: radii.map(({ radius }) => radius) };
}

/** Where each row of motifs starts, its pitch and a motif's width; and where each stamped image lies. */
function decorationFacts(piece: string, all: Shapes['nets'], edition: EditionName): PublishedFact[] {
  const nets = sheetsOf(all, piece).map(({ net }) => net);
  const rows = nets.flatMap((net) => net.rows ?? []);
  const images = nets.flatMap((net) => net.impressions ?? []);
  const [edges, stamps] = [rows.map(({ side }) => side), images.map(({ stamp }) => stamp)];
  const starts = rows.flatMap(({ start, pitch, hole }) => [start, pitch, hole]);
  const places = images.flatMap(({ reveals }) => [reveals.left, reveals.top]);
  return [
    ...(rows.length > 0 ? [{ piece, what: 'edge', word: edges.join(', '), [edition]: starts } as const] : []),
    ...(images.length > 0
      ? [{ piece, what: 'impressions', word: stamps.join(', '), [edition]: places } as const]
      : []),
  ];
}

function placeFact(piece: string, layer: Layer, edition: EditionName): PublishedFact {
  const { on, left, top, turn, centered } = layer;
  return {
    piece,
    what: 'place',
    word: writeRef(on),
    ...(turn === 0 ? {} : { turn }),
    ...centeredIn(centered),
    [edition]: [left, top],
  };
}

function centeredIn({ across, upright }: Layer['centered']): Pick<PublishedValue, 'centered'> {
  if (across && upright) return { centered: 'both' };
  return across ? { centered: 'across' } : upright ? { centered: 'upright' } : {};
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
  const words = [
    ...facts,
    ...said,
    ...prose.references.map(({ kind, of }) => `${kind} ${writeRef(of.value)}`),
  ];
  return { title: title.value, words: words.join(' ').replace(/\s+/gu, ' ').trim() };
}

/** What only the demonstrator reads is on no sheet. */
function isShown(node: Step['prose']['nodes'][number]): boolean {
  return !(node.type === 'containerDirective' && node.name === 'host');
}
