import { type Editions, sidesOf, type Twin, twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { printInches, printMetric, roundedSign } from '../measure/print.ts';
import { type EditionName, UNIT_OF } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import { readRef } from '../project/ref.ts';
import { measuresOf } from '../shape/net.ts';
import { netNamed } from '../shape/sheets.ts';
import { pluralOf } from '../words/figures.ts';
import { sheetNamed } from '../words/names.ts';
import { goesWithSize, saidOutline } from '../words/outlines.ts';
import { betweenMembers, capital } from '../words/typographic.ts';
import {
  figureLettering,
  type Label,
  type LabelLine,
  lengthLettering,
  ofUnit,
  plain,
  withUnit,
} from './lettering.ts';
import type { DrawingStyle } from './style.ts';

/** Inches over millimeters (or the other way round, or one alone), each with its unit unless `bare`. */
export function lengthLabel(length: Twin, { say, shown }: DrawingStyle, bare = false): Label {
  const lettering = bare ? figureLettering : lengthLettering;
  return inEach(shown, (edition) => lettering(length[edition], edition, say));
}

/** A line for each edition shown, which says whose it is where there are two. */
function inEach(shown: DrawingStyle['shown'], line: (edition: EditionName) => LabelLine): Label {
  return shown.map((edition) => (shown.length > 1 ? ofUnit(line(edition), UNIT_OF[edition]) : line(edition)));
}

/** A width and a height, each as `lengthLabel`. */
export function sizeLabels(
  { inch, metric }: Twin<{ readonly size: Size }>,
  style: DrawingStyle,
): [Label, Label] {
  const width = { inch: inch.size.width, metric: metric.size.width };
  const height = { inch: inch.size.height, metric: metric.size.height };
  return [lengthLabel(width, style), lengthLabel(height, style)];
}

/** A piece's size as it is cut: `3 1/4 × 4 1/2 in` over `83 × 114 mm`; of a circle `1 1/2 in circle` over `38 mm`. */
export function sizeLabel(editions: Editions, id: string, { say, shown }: DrawingStyle): Label {
  const sides = twin(editions, ({ shapes }) => {
    const net = netNamed(shapes.nets, readRef(id));
    return net && measuresOf(net);
  });
  if (!sides) return [];
  const said = saidOutline(editions, id, () => '');
  // One length alone would be read as a square's.
  const isTold = said && (goesWithSize(said) || sides.inch.length === 1);
  const outline = isTold ? plain(say(said.key, said.values)) : undefined;
  return inEach(shown, (edition) => {
    const figures = sides[edition].map((side) => figureLettering(side, edition, say));
    const joined = figures.flatMap((each, index) => (index === 0 ? each : [{ text: ' × ' }, ...each]));
    const size = withUnit(joined, edition, say);
    if (!outline || edition !== shown[0]) return size;
    const parts = say.parts<LabelLine>('outline-sized', { size, outline });
    return parts.flatMap((part) => (typeof part === 'string' ? plain(part) : part));
  });
}

/** `⅛ inch (3 millimeters)`, to be heard. */
export function spokenLength(length: Twin, style: DrawingStyle): string {
  return spokenLengths([length], style);
}

/** `1, 4½ and 9 inches (25, 114 and 229 millimeters)`. */
export function spokenLengths(lengths: readonly Twin[], style: DrawingStyle): string {
  return besides(style, (edition) => {
    const figures = lengths.map((length) => spokenFigure(length[edition], edition, style));
    const own = lengths.map((length) => length[edition]);
    return inUnits(listed(figures, style.say), own, edition, style);
  });
}

/** `3¼ by 4½ inches, 83 by 114 millimeters`. */
export function spokenSize({ inch, metric }: Twin<Size>, style: DrawingStyle): string {
  return spokenVolume({ inch: sidesOf(inch), metric: sidesOf(metric) }, style);
}

/** As `spokenSize`, for as many lengths as there are: `3½ by 4¾ by 1 inches, …`. */
export function spokenVolume(sides: Twin<readonly Length[]>, style: DrawingStyle): string {
  const { say, shown } = style;
  const said = shown.map((edition) => {
    const figures = sides[edition].map((side) => spokenFigure(side, edition, style));
    const size = figures.reduce((width, height) => say('drawing-by', { width, height }));
    return inUnits(size, sides[edition], edition, style);
  });
  return said.join(', ');
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[], say: DrawingStyle['say']): string {
  const [last] = items.slice(-1);
  if (items.length < 2 || last === undefined) return items.join('');
  return say('drawing-and', { first: items.slice(0, -1).join(betweenMembers(items, say)), last });
}

/** A piece's, sheet's or panel's id as a caption: `seed-box.lid` is `Seed box lid`. */
export function caption(id: string, say: DrawingStyle['say']): string {
  return capital(sheetNamed(id, say));
}

/** What is said of the leading edition, and of the other in brackets where that is shown. */
function besides({ say, shown }: DrawingStyle, tell: (edition: EditionName) => string): string {
  const [lead, other] = shown;
  return other ? say('drawing-both', { first: tell(lead), second: tell(other) }) : tell(lead);
}

function spokenFigure(length: Length, edition: EditionName, { say }: DrawingStyle): string {
  const figure =
    edition === 'inch' ? printInches(length, 'set') : say.figure(printMetric(length, say.metric));
  return roundedSign(length, UNIT_OF[edition]) ? say('drawing-about', { length: figure }) : figure;
}

const UNITS = { inch: 'drawing-inches', metric: 'drawing-millimeters' } as const;

function inUnits(
  said: string,
  lengths: readonly Length[],
  edition: EditionName,
  { say }: DrawingStyle,
): string {
  return say(say.inPlural(UNITS[edition], pluralOf(lengths, edition, say)), { length: said });
}
