import type { Unit } from '../../measure/length.ts';
import type { At } from '../source.ts';
import { type Group, type Key, listSchema, made, type ReadMap, type Value } from './grammar.ts';
import type { Reader } from './reader.ts';
import { asUnit, asYes } from './values.ts';

/** A key that may be left out. */
export function optional<T>(value: Value<T>, says: string): Key<T, false> {
  return { schema: { ...value.schema, description: says }, value, holds: 'one', sure: false };
}

/** A key whose absence is reported; the rest of the map counts. */
export function needed<T, Sure extends boolean>(key: Key<T, Sure>): Key<T, Sure> {
  return { ...key, needed: true };
}

/** A key without which there is no map. */
export function required<T>(value: Value<T>, says: string): Key<T, true> {
  return { ...optional(value, says), needed: true, sure: true };
}

/** A key that has a usual value, written as a person would write it. */
export function usually<T>(value: Value<T>, usual: string, says: string): Key<T, true> {
  const { schema } = optional(value, says);
  return { schema: { ...schema, default: usual }, value, holds: 'one', usual, sure: true };
}

/** The same, of which only the value counts and not where it stands. */
export function plainly<T>(value: Value<At<T>>, usual: string, says: string): Key<T, true> {
  return usually(
    made(value, (read) => read.value),
    usual,
    says,
  );
}

/** A key that says yes; no where it is left out. */
export function flag(says: string): Key<boolean, true> {
  return plainly(asYes, 'no', says);
}

/** A list; one value alone is a list of one, nothing is an empty one. */
export function listed<T>(value: Value<T>, says: string): Key<readonly T[], true> {
  const schema = { ...listSchema(value.schema), description: says };
  return { schema, value, holds: 'list', sure: true };
}

/** A map that is all defaults where it is not there. */
export function section<T>(value: Value<T>, says: string): Key<T, true> {
  const schema = { ...value.schema, type: ['object', 'null'], description: says };
  return { schema, value, holds: 'section', sure: true };
}

/** What stands under names that people chose; `names` are those of what could not be read, too. */
export type ByName<T> = {
  readonly names: readonly string[];
  readonly values: readonly { readonly name: At<string>; readonly value: T }[];
};

/** A map from names that people chose; nothing is an empty one. `form` says how it is written. */
export function named<T>(value: Value<T>, form: string, says: string): Key<ByName<T>, true> {
  const schema = { type: ['object', 'null'], additionalProperties: value.schema, description: says };
  return { schema, value, holds: 'names', form, sure: true };
}

/** At most so many of them: far more than anybody means, and no more than are read in no time. */
export function atMost<T>(most: number, key: Key<ByName<T>, true>): Key<ByName<T>, true> {
  return { ...key, schema: { ...key.schema, maxProperties: most }, most };
}

/** Keys that make one value together, of which there is none when anything in them has to be reported. */
export function together<K extends Group<unknown>['keys'], T>(
  keys: K,
  make: (read: ReadMap<K>, reader: Reader) => T | undefined,
): Group<T> {
  return { keys, make, sure: false };
}

/** The key `unit`, of a sheet's measurements and of a shared file. */
export const UNIT: Key<Unit, true> = plainly(
  asUnit,
  'in',
  'What a number without a unit is in: `in`, `mm` or `cm`.',
);
