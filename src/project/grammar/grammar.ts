import type { Place } from '../source.ts';
import type { YamlNode, YamlText } from '../yaml/yaml-node.ts';
import type { Reader } from './reader.ts';

/** A JSON Schema (draft 2020-12), in whatever words of it. */
export type Schema = {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly [word: string]: unknown;
};

/** What YAML makes of a text, a number or a yes typed without quotes. */
const SCALAR: readonly string[] = ['string', 'number', 'boolean'];

/** A text, or one that a pattern reads whole. JSON Schema has no flags, and white space round a text is nothing. */
export function textSchema(pattern?: RegExp): Schema {
  if (!pattern) return { type: SCALAR };
  const source = pattern.ignoreCase ? inAnyCase(pattern.source) : pattern.source;
  return {
    type: SCALAR,
    pattern: source.replace(/^\^/u, String.raw`^\s*`).replace(/\$$/u, String.raw`\s*$`),
  };
}

/** The source of a pattern that ignores case, without the flag. Groups with names are not provided for. */
function inAnyCase(source: string): string {
  return source.replace(/\\p\{\w+\}|\\.|\[[^\]]*\]|[a-z]/giu, (part) => {
    if (part.startsWith('\\')) return part;
    if (part.startsWith('[')) return part.replace(/[a-z]-[a-z]/gu, (range) => range + range.toUpperCase());
    return `[${part.toLowerCase()}${part.toUpperCase()}]`;
  });
}

/** One value or a list of them, or nothing, which is an empty one. */
export function listSchema(items: Schema): Schema {
  return { anyOf: [items, { type: 'array', items }, { type: 'null' }] };
}

/** One schema where a condition holds, another where it does not. */
export function choiceSchema(condition: Schema, holds: Schema, otherwise: Schema): Schema {
  // biome-ignore lint/suspicious/noThenProperty: it is a word of JSON Schema
  return { if: condition, then: holds, else: otherwise };
}

/** Where a value stands. */
export type ValueSpot = {
  /** The key it follows, which names it in findings. */
  readonly key: string;
  /** The named thing it is or belongs to, and the way there: `pieces`, `box`; `pieces`, `box`, `at`. */
  readonly path?: readonly string[] | undefined;
  /** Where its defaults stand, and where what is missing in it is reported. */
  readonly at: Place;
};

/** The way to what stands there, for findings to name it by. */
export function whereOf({ path, key }: ValueSpot): readonly string[] {
  return path ?? [key];
}

/** A value to be read. */
export type ToRead = {
  readonly value: Plan;
  readonly node: YamlNode;
  readonly spot: ValueSpot;
  readonly reader: Reader;
};

/** How a value is read, as data that `readValue` walks. What cannot be taken is reported, and undefined. */
export type Plan = {
  readonly schema: Schema;
  readonly way: PlanWay;
  /** What is made of what was read, one after the other. */
  readonly makes: readonly ((read: never, task: ToRead) => unknown)[];
  /** A map that is all defaults where it is not there, or is no map. */
  readonly isSection?: boolean;
  /** Reports why there is nothing behind the key, if it is not simply missing. */
  readonly reportNothing?: (key: YamlText, reader: Reader) => boolean;
};

/** A value is taken from its node, is a map, or is read as another one: in another unit, say, or filled in. */
type PlanWay =
  | { readonly take: (task: ToRead) => unknown }
  | { readonly map: MapGrammar }
  | { readonly turn: (task: ToRead) => Partial<ToRead> | undefined };

export type MapGrammar = {
  /** How it is written, in words. */
  readonly form: string;
  readonly fields: readonly Field[];
  /** Whether keys that are not among its fields are let pass. */
  readonly isOpen: boolean;
};

/** What a plan reads, known to the type checker alone. */
declare const gives: unique symbol;

/** A kind of value. */
export type Value<T> = Plan & { readonly [gives]?: T };

/** A map that there always is. */
export type SureMap<T> = Value<T> & { readonly isSection: true };

/** A key of a map: what follows it, and what holds where nothing does. */
export type Key<T, Sure extends boolean> = {
  readonly schema: Schema;
  readonly value: Plan;
  readonly holds: 'one' | 'section' | 'list' | 'names';
  readonly needed?: boolean;
  /** What holds otherwise, written as a person would write it. */
  readonly usual?: string;
  /** How a map of names is written, in words. */
  readonly form?: string;
  /** How many are read; further ones are reported. */
  readonly most?: number;
  /** Whether a map always has it: without it the map is none. */
  readonly sure: Sure;
  readonly [gives]?: T;
};

/** A few keys that make one value, of which there is none when anything in them has to be reported. */
export type Group<T> = {
  readonly keys: Readonly<Record<string, Key<unknown, boolean>>>;
  readonly make: (read: never, reader: Reader) => unknown;
  readonly sure: false;
  readonly [gives]?: T;
};

export type Keys = { readonly [key: string]: Key<unknown, boolean> | Group<unknown> };

/** A key by its name, and the group it belongs to, by its own. */
export type Field = {
  readonly name: string;
  readonly key: Key<unknown, boolean>;
  readonly group?: { readonly name: string } & Group<unknown>;
};

/** `on hand` is `onHand` in what is read. */
type Joined<K> = K extends `${infer First} ${infer Rest}` ? `${First}${Capitalize<Rest>}` : K;
type ReadOf<K> = K extends { readonly [gives]?: infer T } ? T : never;
type Merged<T> = { [P in keyof T]: T[P] };

/** What a map with these keys is read as. */
export type ReadMap<K extends Keys> = Merged<
  { readonly [P in keyof K as K[P]['sure'] extends true ? Joined<P> : never]: ReadOf<K[P]> } & {
    readonly [P in keyof K as K[P]['sure'] extends true ? never : Joined<P>]?: ReadOf<K[P]>;
  }
>;

/** A value that is taken from its node. */
export function taken<T>(schema: Schema, take: (task: ToRead) => T | undefined): Value<T> {
  return { schema, way: { take }, makes: [] };
}

/** A value that is read as another one, or as one of something else; where that is undefined there is none. */
export function turned<T>(
  schema: Schema,
  turn: (task: ToRead) => ({ readonly value: Value<T> } & Partial<ToRead>) | undefined,
): Value<T> {
  return { schema, way: { turn }, makes: [] };
}

/** A value made of what was read. */
export function made<T, U>(value: Value<T>, make: (read: T, task: ToRead) => U | undefined): Value<U> {
  const plan: Plan = value;
  return { ...plan, makes: [...plan.makes, make] };
}

/** A value that a text alone may stand for. */
export function orShort<T>(short: Value<T>, long: Value<T>): Value<T> {
  const schema = { anyOf: [short.schema, long.schema] };
  return turned(schema, ({ node }) => ({ value: node.kind === 'text' ? short : long }));
}

/**
 * A map of known keys; any other is reported unless it is open to them. `form` says how it is written. A key that is there
 * twice, in a group and by itself, is what it is first.
 */
export function mapOf<K extends Keys>(form: string, keys: K, isOpen = false): Value<ReadMap<K>> {
  const all = Object.entries(keys).flatMap(([name, key]): Field[] => {
    if (!('keys' in key)) return [{ name, key }];
    const group = { name, ...key };
    return Object.entries(key.keys).map(([each, ofGroup]) => ({ name: each, key: ofGroup, group }));
  });
  const fields = all.filter(({ name }, index) => all.findIndex((each) => each.name === name) === index);
  return { schema: mapSchema(fields), way: { map: { form, fields, isOpen } }, makes: [] };
}

/** A map of which every key has a default. */
export function sectionOf<K extends Keys>(form: string, keys: K): SureMap<ReadMap<K>> {
  return { ...mapOf(form, keys), isSection: true };
}

function mapSchema(fields: readonly Field[]): Schema {
  const required = fields.flatMap(({ name, key }) => (key.needed ? [name] : []));
  const properties = Object.fromEntries(fields.map(({ name, key }) => [name, key.schema]));
  const whole = properties.use ? { anyOf: [{ required }, { required: ['use'] }] } : { required };
  return { type: 'object', properties, ...(required.length > 0 && whole), additionalProperties: false };
}
