import fc from 'fast-check';
import type { FormParameter } from '../../../src/project/grammar/form-grammar.ts';
import type { Form } from '../../../src/shape/form.ts';

/** What people measure with, and the most they make: 9 in or 230 mm. */
type Bench = { readonly unit: 'in' | 'mm'; readonly write: (count: number) => string; readonly most: number };

const BENCHES: readonly Bench[] = [
  { unit: 'in', write: (count) => `${count}/16`, most: 144 },
  { unit: 'in', write: (count) => `${count}/8`, most: 72 },
  { unit: 'mm', write: (count) => `${count}`, most: 230 },
];

/** A piece of one form as a person may write it, sensible or not, and the unit of its numbers. */
export type WrittenForm = { readonly unit: 'in' | 'mm'; readonly lines: readonly string[] };

/**
 * Any settings of a form, over the whole range a bench has, from its grammar alone: one of its alternatives, whatever is
 * required, and each of the rest every other time. What the form refuses among them is for the caller to leave out.
 */
export function anyWritten({ name, parameters, oneOf = [] }: Form): fc.Arbitrary<WrittenForm> {
  return fc.constantFrom(...BENCHES).chain((bench) => {
    const rest = parameters.filter(({ key }) => !oneOf.includes(key));
    const one = oneOf.length > 0 ? fc.constantFrom(...oneOf) : fc.constant('');
    return one.chain((key) => {
      const chosen = parameters.filter((each) => each.key === key);
      const lines = [...chosen, ...rest].map((parameter) => {
        const line = anyValue(parameter, bench).map((value) => [`${parameter.key}: ${value}`]);
        const isGiven = parameter.required || parameter.key === key;
        return isGiven ? line : fc.oneof(line, fc.constant<string[]>([]));
      });
      return fc.tuple(...lines).map((all) => ({ unit: bench.unit, lines: [`form: ${name}`, ...all.flat()] }));
    });
  });
}

/** How many lengths a parameter is written with. */
const SIDES: Readonly<Record<FormParameter['kind'], number>> = {
  length: 1,
  size: 2,
  volume: 3,
  count: 0,
  choice: 0,
};

function anyValue({ kind, choices = [] }: FormParameter, { write, most }: Bench): fc.Arbitrary<string> {
  if (kind === 'choice') return fc.constantFrom(...choices);
  if (kind === 'count') return fc.integer({ min: 1, max: 14 }).map(String);
  const sides = SIDES[kind];
  // What is given beside its size is small: a tab, a flange.
  const length = fc.integer({ min: 1, max: sides === 1 ? Math.floor(most / 5) : most });
  return fc
    .array(length, { minLength: sides, maxLength: sides })
    .map((counts) => counts.map(write).join(' x '));
}
