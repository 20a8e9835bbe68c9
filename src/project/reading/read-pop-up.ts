import type { Length } from '../../measure/length.ts';
import { made, type ToRead, type Value, whereOf } from '../grammar/grammar.ts';
import { reportMissing, shown } from '../grammar/reader.ts';
import { asMatch } from '../grammar/values.ts';
import type { OpeningCut } from '../opening.ts';
import type { At } from '../source.ts';
import { entryOf } from '../yaml/yaml-node.ts';

type Across = At<readonly [string, string]>;

/** The two panels of a fold: `back|front`. */
export const asAcross: Value<Across> = made(
  asMatch(
    'the two panels of a fold, such as back|front',
    /^([^|]*[^|\s])\s*\|\s*([^|\s][^|]*)$/u,
    ([, one = '', other = '']): readonly [string, string] => [one, other],
  ),
  (across) => across,
);

/** The keys that say nothing of each cut: a pop-up lies straight on its fold, and nothing else has a depth. */
const STRAYS = {
  'pop-up': {
    in: 'no word of a pop-up',
    turn: 'no word of a pop-up',
    shape: 'no word of a pop-up',
    corners: 'no word of a pop-up',
  },
  slot: {
    depth: 'word of a pop-up',
    across: 'word of a pop-up',
    shape: 'shape of a slot',
    corners: 'shape of a slot',
  },
  window: { depth: 'word of a pop-up', across: 'word of a pop-up' },
} as const;

/** A pop-up of what was read. Slits of two depths are those of the panels named, so these must be. */
export function popUpOf(
  width: At<Length>,
  depth: readonly At<Length>[],
  across: Across | undefined,
  { node, spot, reader }: ToRead,
): OpeningCut | undefined {
  const [first, second = first, third] = depth;
  const missing = (key: string): void =>
    reportMissing({ key, where: whereOf(spot), isWritten: false }, spot.at, reader);
  if (third) {
    const facts = {
      key: 'depth',
      expected: 'one depth, or one for each side of the fold',
      actual: shown(third.at),
    };
    reader.report({ rule: 'unexpected-value', at: third.at, facts });
    return undefined;
  }
  if (!first || !second) {
    if (!entryOf(node, 'depth')) missing('depth');
    return undefined;
  }
  if (depth.length > 1 && !across) {
    if (!entryOf(node, 'across')) missing('across');
    return undefined;
  }
  return { kind: 'pop-up', width, depths: [first, second], ...(across && { across }) };
}

/** Reports the keys that say nothing of what is cut. */
export function reportStrays(kind: OpeningCut['kind'], { node, reader }: ToRead): void {
  for (const [key, misfit] of Object.entries(STRAYS[kind])) {
    const entry = entryOf(node, key);
    if (entry) reader.report({ rule: 'unexpected-value', at: entry.key.at, facts: { misfit, actual: key } });
  }
}
