import type { Length } from '../../measure/length.ts';
import type { FoldedShape } from '../folded-shape.ts';
import type { Fold, Net } from '../net.ts';
import { lineOf } from '../tube.ts';
import { brokenRings, folded } from './sound.ts';

/** A fold beside a crease at an angle that would have to go flat, and by which way. */
type FlatFold = Pick<Fold, 'panels' | 'direction'>;

/**
 * The folds that have to be folded flat so that corners with a crease at an angle fold in: where one of the halves lies
 * against the panel that it is stuck to, else against its other neighbor. Empty unless that closes every tear.
 */
export function flatFoldsMissing(shape: FoldedShape, caliper: Length): readonly FlatFold[] {
  const found: FlatFold[] = [];
  let made = shape;
  for (let torn = brokenRings(made); torn.length > 0; torn = brokenRings(made)) {
    const [ring] = torn;
    const mended =
      ring && lineOf(ring) === 'slanted' ? mendedAt(made.net, ring, torn.length, caliper) : undefined;
    if (!mended) return [];
    found.push(mended.fold);
    made = mended.shape;
  }
  return found;
}

function mendedAt(
  net: Net,
  ring: Fold,
  torn: number,
  caliper: Length,
): { readonly fold: FlatFold; readonly shape: FoldedShape } | undefined {
  const areMates = ({ panels }: Fold): boolean =>
    net.glue.some(({ from, to }) => panels.includes(from) && panels.includes(to));
  const beside = net.folds.filter(
    (fold) => lineOf(fold) !== 'slanted' && fold.panels.some((panel) => ring.panels.includes(panel)),
  );
  for (const fold of beside.toSorted((a, b) => Number(areMates(b)) - Number(areMates(a)))) {
    for (const direction of ['mountain', 'valley'] as const) {
      const flat: Fold = { ...fold, direction, angle: 180 };
      const { shape } = folded(
        { ...net, folds: net.folds.map((each) => (each === fold ? flat : each)) },
        caliper,
      );
      if (brokenRings(shape).length < torn) return { fold: flat, shape };
    }
  }
  return undefined;
}
