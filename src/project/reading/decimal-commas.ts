import { isScalar, Pair, Scalar, type YAMLMap } from 'yaml';

/** A plain text and where it stands in the YAML. */
type PlainScalar = Scalar<string> & { readonly range: readonly [number, number, number] };

/**
 * The pairs of a map. In braces YAML ends a value at every comma: `{ cut: 7,4 x 7,4 }` is one value, and two keys with
 * nothing after them. Where a comma without a space stands between two figures they are one value again.
 */
export function pairsOf({ items, flow }: YAMLMap, text: string): readonly Pair[] {
  if (!flow) return items;
  const pairs: Pair[] = [];
  for (const pair of items) {
    const before = pairs.at(-1);
    const joined = before && joinedValue(before.value, pair, text);
    if (joined) pairs[pairs.length - 1] = new Pair(before.key, joined);
    else pairs.push(pair);
  }
  return pairs;
}

/** The value before and a key without any, as one; undefined where more than a comma stands between two figures. */
function joinedValue(before: unknown, { key, value }: Pair, text: string): Scalar | undefined {
  if (value !== null || !isPlain(before) || !isPlain(key)) return undefined;
  const [start, end] = before.range;
  const between = text.slice(end - 1, key.range[0] + 1);
  if (!/^\d,\d$/u.test(between)) return undefined;
  const joined = new Scalar(text.slice(start, key.range[1]));
  return Object.assign(joined, { type: 'PLAIN', range: [start, key.range[1], key.range[2]] } as const);
}

function isPlain(node: unknown): node is PlainScalar {
  return isScalar(node) && node.type === 'PLAIN' && typeof node.value === 'string' && Boolean(node.range);
}
