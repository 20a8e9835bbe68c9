import type { Length } from '../measure/length.ts';
import { type Spelling, scanMeasurements } from '../measure/scan.ts';
import { languageOf, spellingIn } from '../project/language.ts';
import type { Piece, Project, Site } from '../project/model.ts';
import { writeName } from '../project/ref.ts';
import type { At } from '../project/source.ts';
import { boxSize, measuresOf, type Net, type Opening, outlineOf, type PopUp } from '../shape/net.ts';
import type { Layer, Shapes } from '../shape/shapes.ts';
import type { Sheet } from '../shape/sheets.ts';
import { sayCorners, sayRef } from './words.ts';

/** Something of a project that has been measured: one length, or the two or three of a size. */
export type KnownMeasure = {
  readonly lengths: readonly Length[];
  /** What it is, to be read after "nearest is 4 1/2 in,": `the height of front`. */
  readonly what: string;
  /** The directive that prints it, so that prose need not repeat the number: `:size[front]`. */
  readonly directive?: string;
  /** The piece it is of, where it is of one. */
  readonly of?: string;
  /** Of a border that a layer leaves: the piece it lies on. */
  readonly on?: string;
  /** A border, or a measure of a tool, which a sentence about a piece doesn't mean. */
  readonly kind?: 'reveal' | 'tool';
};

/** Everything a number in the prose may rightly mean. */
export function measuredIn(project: Project, shapes: Shapes, site: Site): KnownMeasure[] {
  return [
    ...[...shapes.nets].flatMap(([piece, sheets]) =>
      madeOf(
        piece,
        sheets.flatMap((sheet) => netMeasures(piece, sheet)),
      ),
    ),
    ...shapes.layers.flatMap((layer) => madeOf(layer.piece.id.value, layerMeasures(layer))),
    ...[...project.pieces.values()].flatMap((piece) => madeOf(piece.id.value, pieceMeasures(piece))),
    ...holdsMeasures(project),
    ...stockMeasures(project),
    ...supplyMeasures(project, spellingIn(languageOf(project, site))),
    { ...one(site.bench.board.value, 'the pitch of the score board'), kind: 'tool' },
    one(site.bench.trimmer.value, 'the length of the trimmer'),
    { ...one(site.bench.printerMargin.value, 'the margin of the printer'), kind: 'tool' },
  ];
}

function madeOf(of: string, measures: readonly KnownMeasure[]): readonly KnownMeasure[] {
  return measures.map((measure) => ({ ...measure, of }));
}

/** The panels of a further sheet (`box.lid`) are named after the piece. */
function netMeasures(piece: string, { name, net }: Sheet): KnownMeasure[] {
  const id = writeName({ piece, part: name });
  const own = sizeOf([net.size.width, net.size.height], id, `:size[${id}]`);
  const isFlat = net.panels.length === 1;
  const panels = (isFlat ? [] : net.panels).flatMap((panel) => {
    const { width, height } = boxSize(panel.box);
    return sizeOf([width, height], `${piece}.${panel.id}`, `:size[${piece}.${panel.id}]`);
  });
  const scores = net.scores.flatMap(({ from, at, isCut }) =>
    at.map((length) =>
      one(length, `a ${isCut ? 'cut' : 'score line'} of ${id} from the ${from}`, `:scores[${piece}]`),
    ),
  );
  const cuts = net.slits.map(({ from, to }) =>
    one(to.x.minus(from.x).abs().plus(to.y.minus(from.y).abs()), `a slit of ${id}`),
  );
  const openings = (net.openings ?? []).flatMap((opening) => openingMeasures(piece, opening));
  const popUps = (net.popUps ?? []).flatMap((popUp) => popUpMeasures(piece, popUp));
  const outline = Object.entries(outlineOf(net)?.lengths ?? {}).map(([key, length]) =>
    one(length, `the ${key} of ${id}`),
  );
  return [
    ...own,
    ...panels,
    ...scores,
    ...cuts,
    ...openings,
    ...popUps,
    ...outline,
    ...decorationMeasures(piece, id, net),
  ];
}

function openingMeasures(piece: string, opening: Opening): KnownMeasure[] {
  const { name, shape, corners = [], margins } = opening;
  const what = `${piece}.${name}`;
  const sides = measuresOf(opening);
  const [across] = sides;
  return [
    ...(across && sides.length === 1 ? [one(across, what)] : sizeOf(sides, what, `:size[${what}]`)),
    ...Object.entries(shape?.lengths ?? {}).map(([key, length]) => one(length, `the ${key} of ${what}`)),
    ...corners.map((each) => one(each.radius.value, `the ${sayCorners(each.corners)} of ${what}`)),
    ...Object.values(margins).map((length) => one(length, `a distance of ${what} from an edge`)),
  ];
}

function popUpMeasures(piece: string, { name, width, depths, ends }: PopUp): KnownMeasure[] {
  const what = `${piece}.${name}`;
  return [
    one(width, `the width of ${what}`, `:size[${what}]`),
    ...depths.map((depth) => one(depth, `the depth of ${what}`, `:size[${what}]`)),
    one(depths[0].plus(depths[1]), `the length of ${what}`),
    ...ends.map((length) => one(length, `a distance of ${what} from an edge`)),
  ];
}

function decorationMeasures(piece: string, id: string, { rows = [], impressions = [] }: Net): KnownMeasure[] {
  const edge = `:edge[${piece}]`;
  return [
    ...rows.flatMap(({ side, pitch, hole, depth, ends }) => [
      ...[pitch, hole, depth].map((length) => one(length, `the tool along the ${side} edge of ${id}`, edge)),
      ...ends.map((length) => one(length.abs(), `where the motifs end on the ${side} edge of ${id}`, edge)),
    ]),
    ...impressions.flatMap(({ stamp, size, reveals }) => [
      ...sizeOf([size.width, size.height], `the ${stamp} on ${id}`),
      ...Object.values(reveals).map((length) =>
        one(length.abs(), `where the ${stamp} lies on ${id}`, `:impressions[${piece}]`),
      ),
    ]),
  ];
}

function layerMeasures({ piece, on, reveals }: Layer): KnownMeasure[] {
  const id = piece.id.value;
  return Object.values(reveals).map((length) => ({
    ...one(length, `a reveal of ${id} on ${sayRef(on)}`, `:reveal[${id}]`),
    on: on.piece,
    kind: 'reveal' as const,
  }));
}

function pieceMeasures({ id, body, corners = [], placement }: Piece): KnownMeasure[] {
  const { left, right, top, bottom } = placement;
  const settings = body.kind === 'form' ? [...body.settings] : [];
  return [
    ...[left, right, top, bottom].flatMap((given) =>
      given ? [one(given.value.abs(), `a distance of ${id.value} from an edge`)] : [],
    ),
    ...corners.map((each) => one(each.radius.value, `the ${sayCorners(each.corners)} of ${id.value}`)),
    ...settings.flatMap(([key, setting]) =>
      setting.kind === 'lengths' ? sizeOf(setting.lengths.map(plain), `"${key}" of ${id.value}`) : [],
    ),
  ];
}

function holdsMeasures({ holds }: Project): KnownMeasure[] {
  return holds?.size ? sizeOf(holds.size.map(plain), `the ${holds.item} it holds`) : [];
}

function plain({ value }: At<Length>): Length {
  return value;
}

function stockMeasures({ stock }: Project): KnownMeasure[] {
  return [...stock.values()].flatMap(({ id, sheets, caliper }) => [
    ...sheets.flatMap(({ size }) => sizeOf([size.width.value, size.height.value], `a sheet of ${id.value}`)),
    ...(caliper ? [one(caliper.value, `the thickness of ${id.value}`)] : []),
  ]);
}

function supplyMeasures({ supplies }: Project, spelling: Spelling): KnownMeasure[] {
  return supplies.flatMap(({ item, instead, each, pack }) =>
    [item, instead, each, pack]
      .flatMap((said) => (said ? scanMeasurements(said.value, spelling) : []))
      .flatMap(({ lengths }) => sizeOf(lengths, `the supply ${item.value}`)),
  );
}

function one(length: Length, what: string, directive?: string): KnownMeasure {
  return { lengths: [length], what, ...(directive !== undefined && { directive }) };
}

/** A size as a whole, and each of its sides by itself. */
function sizeOf(lengths: readonly Length[], what: string, directive?: string): KnownMeasure[] {
  const [width, height, depth] = lengths;
  if (!width || !height) return width ? [one(width, what, directive)] : [];
  const sides = depth
    ? lengths.map((length) => one(length, `one side of ${what}`, directive))
    : [one(width, `the width of ${what}`, directive), one(height, `the height of ${what}`, directive)];
  return [{ lengths, what: `the size of ${what}`, ...(directive !== undefined && { directive }) }, ...sides];
}
