import type { ReferenceKind, Step } from '../../project/model.ts';
import { referenceOf } from '../names.ts';

/** Naming a piece so, a step takes it in hand; a size, a count or a drawing only tells of it. */
const TAKES_UP: ReadonlySet<ReferenceKind> = new Set(['piece', 'reveal', 'scores', 'trims', 'assembly']);

/** Ids of the pieces a step takes up, in the order it names them. */
export function piecesNamed({ prose }: Step): ReadonlySet<string> {
  const named = prose.references.filter(({ kind }) => TAKES_UP.has(kind));
  return new Set(named.map(({ name }) => referenceOf(name.value).piece));
}
