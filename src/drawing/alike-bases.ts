import type { Editions } from '../edition/editions.ts';
import { type Ref, writeRef } from '../project/ref.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { pileOn } from './pile.ts';
import { decorationsIn } from './pile-decorations.ts';
import { colorOf, type DrawingStyle } from './style.ts';
import { coordinate } from './svg.ts';

/** Bases sorted into those on which the very same lies: sheets of the same paper in the same places, bare of stamps and punches. */
export function alikeBases(editions: Editions, bases: readonly Ref[], style: DrawingStyle): readonly Ref[][] {
  const groups = new Map<string, Ref[]>();
  for (const base of bases) {
    const key = looksOf(editions, base, style) ?? writeRef(base);
    groups.set(key, [...(groups.get(key) ?? []), base]);
  }
  return [...groups.values()];
}

/** Everything that is drawn of a base, without a name; undefined where it cannot be like another's. */
function looksOf(editions: Editions, base: Ref, style: DrawingStyle): string | undefined {
  const [leading] = style.shown;
  const pile = pileOn(editions, base, leading);
  const isBare =
    pile &&
    decorationsIn(pile, editions, style).every(([{ images, motifs }]) => images.length + motifs.length === 0);
  if (!isBare) return undefined;
  const points = (outline: readonly Point2[]): string =>
    outline.map(({ x, y }) => `${coordinate(x)},${coordinate(y)}`).join(' ');
  const sheets = [pile.sheet, ...pile.placed.map(({ sheet }) => sheet)];
  const looks = sheets.map(({ piece, outline, openings, behind }) => [
    colorOf(editions[leading], piece),
    points(outline),
    openings.map(points),
    behind.map((each) => [each.piece, points(each.outline)]),
  ]);
  return JSON.stringify([base.face, looks]);
}
