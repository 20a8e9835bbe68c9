import type { FormParameter, FormSetting } from '../grammar/form-grammar.ts';
import { made, type Value } from '../grammar/grammar.ts';
import { asChoice, asCount, asLengths } from '../grammar/values.ts';

/** How many lengths each kind of parameter is written with; the others are no lengths. */
const LENGTHS: Partial<Record<FormParameter['kind'], 1 | 2 | 3>> = { length: 1, size: 2, volume: 3 };

const MOST_COUNTED = 99;

/** A setting of a form or an outline. */
export function asSetting({ kind, choices = [] }: FormParameter): Value<FormSetting> {
  const count = LENGTHS[kind];
  if (count !== undefined)
    return made(asLengths(count), (lengths, { spot: { at } }) => {
      const unit = lengths.at(-1)?.unit;
      return { kind: 'lengths', lengths, at, ...(unit && { unit }) };
    });
  if (kind === 'count')
    return made(asCount(1, MOST_COUNTED), ({ value, at }) => ({ kind: 'count', count: value, at }));
  return made(asChoice(choices), ({ value, at }) => ({ kind: 'word', word: value, at }));
}
