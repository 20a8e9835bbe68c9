import { type Editions, type Twin, twin } from '../edition/editions.ts';
import { areAll, namesOf, type RoundedCorners } from '../project/corners.ts';

/** How corners are rounded, and by what, an entry a sentence. */
type CornersSaid<T> = { readonly key: string; readonly values: { readonly radius: T } };

/** The key under which a language says that corners are rounded: all, or those with a name such as `top left`. */
export function cornersKey(name?: string): string {
  return name === undefined ? 'corners-rounded' : `corners-rounded-${name.replace(' ', '-')}`;
}

/** The rounded corners of a piece, and how their radii are said in both editions. */
export function saidCorners<T>(
  editions: Editions,
  id: string,
  sayLength: (length: Twin) => T,
): readonly CornersSaid<T>[] {
  const rounded = twin(editions, ({ project }) => project.pieces.get(id)?.corners);
  return rounded ? saidRounding(rounded, sayLength) : [];
}

/** The same of any rounded corners, of a piece or of an opening. */
export function saidRounding<T>(
  rounded: Twin<RoundedCorners>,
  sayLength: (length: Twin) => T,
): readonly CornersSaid<T>[] {
  return rounded.inch.flatMap(({ corners, radius: { value: inch } }, index) => {
    const radius = sayLength({ inch, metric: rounded.metric[index]?.radius.value ?? inch });
    const keys = areAll(corners) ? [cornersKey()] : namesOf(corners).map(cornersKey);
    return keys.map((key) => ({ key, values: { radius } }));
  });
}
