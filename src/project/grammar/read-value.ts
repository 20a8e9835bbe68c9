import type { YamlNode } from '../yaml/yaml-node.ts';
import type { Plan, SureMap, ToRead, Value, ValueSpot } from './grammar.ts';
import { asMeant } from './misspelled.ts';
import { behindKey, closeMap, type FoundValue, keep, openMap } from './open-map.ts';
import type { Reader } from './reader.ts';

/**
 * Reads a value, by one call for each level of the YAML: what follows each key of a map, then what is made of it.
 * @throws when a section has a key without a default.
 */
export function readValue<T>(value: SureMap<T>, node: YamlNode, spot: ValueSpot, reader: Reader): T;
export function readValue<T>(value: Value<T>, node: YamlNode, spot: ValueSpot, reader: Reader): T | undefined;
export function readValue(wanted: Plan, given: YamlNode, from: ValueSpot, reader: Reader): unknown {
  const [task, makes] = followTurns({ value: wanted, node: given, spot: from, reader });
  if (!task) return undefined;
  const { way } = task.value;
  const gathering = 'map' in way ? openMap(way.map, task) : [];
  for (const gathered of gathering) {
    for (const field of gathered.fields) {
      const found: FoundValue[] = [];
      for (const { node, spot } of behindKey(field, gathered.reader, task)) {
        const value = readValue(field.key.value, node, spot, gathered.reader);
        found.push({ spot, value });
        // What is usual stands last, for where nothing could be read before.
        if (field.key.usual !== undefined && value !== undefined) break;
      }
      keep(field, found, gathered);
    }
  }
  let read = 'take' in way ? way.take(task) : closeMap(gathering, task);
  // Each make takes what the one before it gives, which the types saw where they were put together.
  for (const make of makes) if (read !== undefined) read = make(read as never, task);
  return read;
}

/** What is read in the end, where a value is read as another one, and all that is made of it. */
function followTurns(first: ToRead): readonly [ToRead | undefined, Plan['makes']] {
  let [task, makes] = [first, first.value.makes];
  while ('turn' in task.value.way) {
    const turned = task.value.way.turn(task);
    if (!turned) return [undefined, makes];
    task = { ...task, ...turned };
    makes = [...task.value.makes, ...makes];
  }
  return [{ ...task, node: asMeant(task.node, task.value) }, makes];
}
