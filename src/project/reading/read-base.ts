import type { Value } from '../grammar/grammar.ts';
import type { Reader } from '../grammar/reader.ts';
import { asMatch } from '../grammar/values.ts';
import type { Piece } from '../model.ts';
import { REF, type Ref, readRef } from '../ref.ts';
import { type At, byPlace } from '../source.ts';
import { entryOf, type YamlNode } from '../yaml/yaml-node.ts';

/** `front`, `box.front` for a panel, `inside box.front` for its other face. */
export const asBase: Value<At<Ref>> = asMatch(
  'a piece or a panel, such as front or box.front',
  REF,
  ([text]) => {
    const ref = readRef(text);
    return ref.part?.includes('.') ? undefined : ref;
  },
);

/** What a piece is stuck to: the face of a base, or the back of it. It can't be both. */
export function baseOf(
  on: At<Ref> | undefined,
  behind: At<Ref> | undefined,
  node: YamlNode,
  reader: Reader,
): Pick<Piece, 'on'> {
  const keys = [entryOf(node, 'on'), entryOf(node, 'behind')].map((entry) => entry?.key);
  const [first, second] = keys.filter((each) => each !== undefined).toSorted(byPlace);
  if (first && second) {
    const facts = { misfit: 'one too many', actual: second.text, other: first.text } as const;
    reader.report({ rule: 'unexpected-value', at: second.at, facts });
  }
  if (on) return { on };
  return behind ? { on: { ...behind, value: { ...behind.value, face: 'behind' } } } : {};
}
