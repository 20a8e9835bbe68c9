import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Length } from '../../src/measure/length.ts';
import type { Finding } from '../../src/project/finding.ts';
import { wholeFile } from '../../src/project/frontmatter.ts';
import { made, mapOf, sectionOf, turned, type Value } from '../../src/project/grammar/grammar.ts';
import {
  flag,
  listed,
  named,
  optional,
  required,
  section,
  together,
  usually,
} from '../../src/project/grammar/keys.ts';
import { readValue } from '../../src/project/grammar/read-value.ts';
import { NOTHING_SHARED, type Reader } from '../../src/project/grammar/reader.ts';
import { asCount, asLength, asText } from '../../src/project/grammar/values.ts';
import { type At, sourceFile, startOf } from '../../src/project/source.ts';
import { readYaml } from '../../src/project/yaml/yaml-tree.ts';

/** What a YAML text is read as, and the rules of what was found in it. */
function read<T>(value: Value<T>, yaml: string): { readonly read: T | undefined; readonly rules: string[] } {
  const findings: Finding[] = [];
  const reader: Reader = {
    report: (finding) => findings.push(finding),
    unit: 'in',
    moneyDecimals: 2,
    forms: [],
    outlines: [],
    shared: NOTHING_SHARED,
  };
  const file = sourceFile('some.yaml', yaml);
  const { root } = readYaml(wholeFile(file));
  const given = readValue(value, root, { key: 'all', at: startOf(file) }, reader);
  return { read: given, rules: findings.map(({ rule }) => rule) };
}

const asNumber = made(asCount(0, 9), ({ value }) => value);

const BOX = mapOf('a box', {
  width: required(asLength, 'How wide it is.'),
  'on hand': optional(asNumber, 'How many there are.'),
  pack: usually(asNumber, '2', 'How many are sold together.'),
  spare: flag('Whether it may be missing.'),
  names: listed(asText, 'What it is called.'),
  lids: named(asNumber, 'lids by name', 'Its lids.'),
  at: section(sectionOf('places', { left: optional(asNumber, 'From the left.') }), 'Where it is.'),
  pair: together({ one: optional(asNumber, 'One.'), two: optional(asNumber, 'Two.') }, ({ one, two }) =>
    one !== undefined && two !== undefined ? one + two : undefined,
  ),
});

describe('a map', () => {
  it('is read as what its keys say, to the type checker too', () => {
    const box = read(BOX, 'width: 2\non hand: 3\nlids: { a: 1 }\npair: 4\none: 4\ntwo: 5\n');
    expectTypeOf(box.read).toEqualTypeOf<
      | {
          readonly width: At<Length>;
          readonly onHand?: number;
          readonly pack: number;
          readonly spare: boolean;
          readonly names: readonly At<string>[];
          readonly lids: {
            readonly names: readonly string[];
            readonly values: readonly { readonly name: At<string>; readonly value: number }[];
          };
          readonly at: { readonly left?: number };
          readonly pair?: number;
        }
      | undefined
    >();
    expect(box.read).toMatchObject({ onHand: 3, pack: 2, spare: false, names: [], at: {}, pair: 9 });
    expect(box.read?.lids.values.map(({ name, value }) => [name.value, value])).toEqual([['a', 1]]);
    // A group has no key of its own.
    expect(box.rules).toEqual(['unknown-key']);
  });

  it('is none without what it needs, and with what is usual where that cannot be read', () => {
    expect(read(BOX, 'pack: 3\n')).toEqual({ read: undefined, rules: ['missing-value'] });
    expect(read(BOX, 'width: 2\npack: many\n').read?.pack).toBe(2);
    expect(read(BOX, 'width: 2\npack:\n')).toMatchObject({ read: { pack: 2 }, rules: ['missing-value'] });
  });

  it('has nothing of a group in which anything is wrong', () => {
    const { read: box, rules } = read(BOX, 'width: 2\none: 4\ntwo: five\n');
    expect(rules).toEqual(['unexpected-value']);
    expect(box).toBeDefined();
    expect(box).not.toHaveProperty('pair');
  });
});

describe('a value', () => {
  it('that is made of another is made step by step, the innermost first', () => {
    const twice = made(asNumber, (each) => each * 2);
    const told = made(
      turned(twice.schema, () => ({ value: twice })),
      (each) => `${each} of them`,
    );
    expectTypeOf(told).toExtend<Value<string>>();
    expect(read(told, '4').read).toBe('8 of them');
    expect(read(told, 'four')).toEqual({ read: undefined, rules: ['unexpected-value'] });
  });

  it('of one kind stands for no other', () => {
    // @ts-expect-error A number is no text.
    const wrong: Value<string> = asNumber;
    expect(read(wrong, '4').read).toBe(4);
    // @ts-expect-error What is made of a number is given a number.
    made(asNumber, (text: string) => text);
  });
});
