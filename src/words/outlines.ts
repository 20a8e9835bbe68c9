import { type Editions, type Twin, twin } from '../edition/editions.ts';
import type { FormParameter } from '../project/grammar/form-grammar.ts';
import { readRef } from '../project/ref.ts';
import { type NamedOutline, type Opening, outlineOf } from '../shape/net.ts';
import { outlines } from '../shape/outlines/index.ts';
import { netNamed } from '../shape/sheets.ts';
import { saidRounding } from './corners.ts';

/** The key under which a language says what an outline is called. */
export function outlineKey(name: string): string {
  return `outline-${name.replaceAll(' ', '-')}`;
}

/** What the outlines are called in English, by the keys under which other languages say it. */
export function wordsOfOutlines(): readonly (readonly [key: string, text: string])[] {
  return outlines.map(({ name, said }) => [outlineKey(name), said]);
}

/** How an outline is said: by which label, and what fills it. */
type SaidShape<T> = { readonly key: string; readonly values: Readonly<Record<string, T | number>> };

/** The outline of a piece, and how its lengths are said in both editions; undefined of a rectangle. */
export function saidOutline<T>(
  editions: Editions,
  id: string,
  sayLength: (length: Twin) => T,
): SaidShape<T> | undefined {
  const shape = twin<NamedOutline>(editions, ({ shapes }) => {
    const net = netNamed(shapes.nets, readRef(id));
    return net && outlineOf(net);
  });
  return shape && saidShape(shape, sayLength);
}

/** Whether an outline is told with the size, `1 1/2 in circle`: by its name alone. */
export function goesWithSize(shape: SaidShape<unknown>): boolean {
  return hasName(shape) && Object.keys(shape.values).length === 0;
}

/** Whether there is a name for an outline. What is drawn has none: it is cut out by its template. */
export function hasName({ key }: SaidShape<unknown>): boolean {
  return key !== outlineKey('drawn');
}

/** The outline of an opening, or how its corners are rounded. */
export function saidOpening<T>(
  { inch, metric }: Twin<Opening>,
  sayLength: (length: Twin) => T,
): readonly SaidShape<T>[] {
  if (!inch.shape || !metric.shape)
    return saidRounding({ inch: inch.corners ?? [], metric: metric.corners ?? [] }, sayLength);
  const { key, values } = saidShape({ inch: inch.shape, metric: metric.shape }, sayLength);
  // A piece is cut out by its template, an opening as that shows.
  return [{ key: key === outlineKey('drawn') ? 'shape-drawn' : key, values }];
}

function saidShape<T>(shape: Twin<NamedOutline>, sayLength: (length: Twin) => T): SaidShape<T> {
  const { name, counts, lengths } = shape.inch;
  const said = Object.entries(lengths).map(([key, inch]) => {
    return [key, sayLength({ inch, metric: shape.metric.lengths[key] ?? inch })] as const;
  });
  return { key: outlineKey(name), values: { ...counts, ...Object.fromEntries(said) } };
}

/** What an outline is told, in the order of its settings; nothing of one that there is no longer. */
export function parametersOf(name: string): readonly FormParameter[] {
  return outlines.find((outline) => outline.name === name)?.parameters ?? [];
}
