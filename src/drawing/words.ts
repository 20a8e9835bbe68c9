import type { Twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { printInches, printMillimetres, rulerInches } from '../measure/print.ts';
import type { Size } from '../measure/size.ts';
import { betweenMembers } from '../words/labels.ts';
import { sheetNamed } from '../words/names.ts';
import { around, inchLettering, type Label, type LabelLine, metricLettering } from './lettering.ts';
import type { DrawingStyle } from './style.ts';

/** A size in both editions. */
type SizeTwin = { readonly inch: Size; readonly metric: Size };

/** Inches over millimetres (or the other way round), each with its unit unless `bare`. */
export function lengthLabel(length: Twin, style: DrawingStyle, bare = false): Label {
  const { say, leading } = style;
  const inches = inchLettering(length.inch);
  const millimetres = metricLettering(length.metric, say);
  const lines = bare
    ? [inches, millimetres]
    : [around(say('drawing-in'), inches), around(say('drawing-mm'), millimetres)];
  return leading === 'inch' ? lines : lines.toReversed();
}

/** A width and a height, each as `lengthLabel`. */
export function sizeLabels(
  { inch, metric }: { readonly inch: { readonly size: Size }; readonly metric: { readonly size: Size } },
  style: DrawingStyle,
): [Label, Label] {
  const width = { inch: inch.size.width, metric: metric.size.width };
  const height = { inch: inch.size.height, metric: metric.size.height };
  return [lengthLabel(width, style), lengthLabel(height, style)];
}

/** `3 1/4 × 4 1/2 in` over `83 × 114 mm`. */
export function sizeLabel({ inch, metric }: SizeTwin, { say, leading }: DrawingStyle): Label {
  const times = (first: LabelLine, second: LabelLine): LabelLine => [...first, { text: ' × ' }, ...second];
  const inches = around(say('drawing-in'), times(inchLettering(inch.width), inchLettering(inch.height)));
  const millimetres = around(
    say('drawing-mm'),
    times(metricLettering(metric.width, say), metricLettering(metric.height, say)),
  );
  return leading === 'inch' ? [inches, millimetres] : [millimetres, inches];
}

/** `⅛ inch (3 millimetres)`, to be heard. */
export function spokenLength(length: Twin, { say, leading }: DrawingStyle): string {
  const inches = spokenInches(length.inch, say);
  const millimetres = spokenMillimetres(length.metric, say);
  const [first, second] = leading === 'inch' ? [inches, millimetres] : [millimetres, inches];
  return say('drawing-both', { first, second });
}

/** `1, 4½ and 9 inches (25, 114 and 229 millimetres)`. */
export function spokenLengths(lengths: readonly Twin[], style: DrawingStyle): string {
  const [only] = lengths;
  if (lengths.length === 1 && only) return spokenLength(only, style);
  const { say, leading } = style;
  const inches = listed(
    lengths.map(({ inch }) => printInches(inch, 'set')),
    say,
  );
  const millimetres = listed(
    lengths.map(({ metric }) => say.figure(printMillimetres(metric))),
    say,
  );
  const inInches = say('drawing-inches', { length: inches });
  const inMillimetres = say('drawing-millimetres', { length: millimetres });
  const [first, second] = leading === 'inch' ? [inInches, inMillimetres] : [inMillimetres, inInches];
  return say('drawing-both', { first, second });
}

/** `3¼ by 4½ inches, 83 by 114 millimetres`. */
export function spokenSize({ inch, metric }: SizeTwin, style: DrawingStyle): string {
  return spokenVolume([inch.width, inch.height], [metric.width, metric.height], style);
}

/** As `spokenSize`, for as many lengths as there are: `3½ by 4¾ by 1 inches, …`. */
export function spokenVolume(
  inch: readonly Length[],
  metric: readonly Length[],
  { say, leading }: DrawingStyle,
): string {
  const by = (numbers: readonly string[]): string =>
    numbers.reduce((width, height) => say('drawing-by', { width, height }));
  const inches = say('drawing-inches', { length: by(inch.map((length) => printInches(length, 'set'))) });
  const millimetres = say('drawing-millimetres', {
    length: by(metric.map((length) => say.figure(printMillimetres(length)))),
  });
  return (leading === 'inch' ? [inches, millimetres] : [millimetres, inches]).join(', ');
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[], say: DrawingStyle['say']): string {
  const [last] = items.slice(-1);
  if (items.length < 2 || last === undefined) return items.join('');
  return say('drawing-and', { first: items.slice(0, -1).join(betweenMembers(items)), last });
}

/** A piece's, sheet's or panel's id as a caption: `seed-box.lid` is `Seed box lid`. */
export function caption(id: string, say: DrawingStyle['say']): string {
  return capital(sheetNamed(id, say));
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function spokenInches(length: Length, say: DrawingStyle['say']): string {
  const { whole, numerator } = rulerInches(length);
  const one = whole === 0n || (whole === 1n && numerator === 0n) || say.isOne(length.mm / 25.4);
  return say(one ? 'drawing-inch' : 'drawing-inches', { length: printInches(length, 'set') });
}

function spokenMillimetres(length: Length, say: DrawingStyle['say']): string {
  const text = printMillimetres(length);
  const key = say.isOne(Number(text)) ? 'drawing-millimetre' : 'drawing-millimetres';
  return say(key, { length: say.figure(text) });
}
