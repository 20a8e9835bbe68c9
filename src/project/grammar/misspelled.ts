import { isSlipOf, nearestName } from '../nearest.ts';
import { entryOf, type YamlMap, type YamlNode } from '../yaml/yaml-node.ts';
import type { Field, MapGrammar, Plan } from './grammar.ts';

/**
 * A map as it is meant: a key with a slip in it is read as the right one, unless that is there too, so that nothing else
 * misses it. `typed` keeps the slip, which is reported when the map is read.
 */
export function asMeant(node: YamlNode, { way }: Plan): YamlNode {
  if (node.kind !== 'map' || !('map' in way) || way.map.isOpen) return node;
  return corrected(node, way.map);
}

function corrected(map: YamlMap, { fields }: MapGrammar): YamlMap {
  const known = new Set(fields.map(({ name }) => name));
  const free = fields.filter(({ name }) => !entryOf(map, name));
  const isRight = map.entries.every(({ key }) => known.has(key.text));
  if (isRight) return map;
  const taken = new Set<string>();
  const entries = map.entries.map((entry) => {
    const typed = entry.key.text;
    const meant = known.has(typed) ? undefined : meantBy(typed, free);
    if (meant === undefined || taken.has(meant)) return entry;
    taken.add(meant);
    return { ...entry, key: { ...entry.key, text: meant, typed } };
  });
  return { ...map, entries };
}

/** The key that a word is a slip of: one that has to be there before any other. */
function meantBy(typed: string, free: readonly Field[]): string | undefined {
  const alike = free.filter(({ name }) => isSlipOf(typed, name));
  const needed = alike.filter(({ key }) => key.needed);
  const names = (needed.length > 0 ? needed : alike).map(({ name }) => name);
  return nearestName(typed, names);
}
