import type { Length, Unit } from '../measure/length.ts';
import { writtenUnit } from '../measure/notation.ts';
import type { Fields } from './fields.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { FormAsWritten, FormGrammar, FormParameter, FormSetting } from './model.ts';
import { type Reader, type ReadValue, shown } from './reader.ts';
import type { At } from './source.ts';
import { asChoice, asCount, asLengths, asText } from './values.ts';

/** The keys a piece of a form may have besides the form's own. */
export const FORM_KEYS: readonly string[] = [...KNOWN_KEYS.piece, 'form'];

/** How many lengths each kind of parameter is written with; the others are no lengths. */
const LENGTHS: Partial<Record<FormParameter['kind'], 1 | 2 | 3>> = { length: 1, size: 2, volume: 3 };

const MOST_COUNTED = 99;

/** The form a piece names, among those there are; one that isn't there is reported. */
export function readFormName(fields: Fields, { forms, report }: Reader): FormGrammar | undefined {
  const written = fields.require('form', asText);
  if (!written) return undefined;
  const name = written.value.toLowerCase();
  const form = forms.find((each) => each.name === name);
  const among = forms.map((each) => each.name);
  if (!form)
    report({
      rule: 'unknown-reference',
      at: written.at,
      facts: { what: 'form', name: written.value, among },
    });
  return form;
}

/** Reads a form's settings, each once and for all; undefined, with every fault reported, when one cannot be read. */
export function readForm(form: FormGrammar, fields: Fields, reader: Reader): FormAsWritten | undefined {
  const settings = new Map<string, FormSetting>();
  let ruler: Unit | undefined;
  let whole = true;
  for (const parameter of form.parameters) {
    const { key, required } = parameter;
    if (!fields.has(key)) {
      if (required) fields.expect(key);
      whole &&= !required;
      continue;
    }
    const setting = fields.read(key, settingReader(parameter));
    if (setting?.kind === 'lengths') ruler ??= unitOf(setting.lengths, reader);
    if (setting) settings.set(key, setting);
    else whole = false;
  }
  const name = fields.read('form', asText);
  if (!hasOneOf(form, fields, reader) || !whole || !name) return undefined;
  const unit = ruler ?? reader.unitIn(name.at.file);
  return { form: { value: form.name, at: name.at }, settings, ruler: unit === 'in' ? 'in' : 'mm' };
}

function settingReader({ kind, choices = [] }: FormParameter): ReadValue<FormSetting> {
  const count = LENGTHS[kind];
  return (node, key, reader) => {
    if (count !== undefined) {
      const lengths = asLengths(count)(node, key, reader);
      return lengths && { kind: 'lengths', lengths, at: node.at };
    }
    if (kind === 'count') {
      const read = asCount(1, MOST_COUNTED)(node, key, reader);
      return read && { kind: 'count', count: read.value, at: read.at };
    }
    const read = asChoice(choices)(node, key, reader);
    return read && { kind: 'word', word: read.value, at: read.at };
  };
}

/** The unit of what was written last, else that of the file's bare numbers. */
function unitOf(lengths: readonly At<Length>[], reader: Reader): Unit | undefined {
  const last = lengths.at(-1);
  return last && (writtenUnit(shown(last.at)) ?? reader.unitIn(last.at.file));
}

/** Whether exactly one of the parameters that stand for each other is given; says so where it isn't. */
function hasOneOf({ oneOf = [] }: FormGrammar, fields: Fields, { report }: Reader): boolean {
  const [first = '', second] = oneOf.filter((key) => fields.has(key));
  if (oneOf.length === 0 || (first !== '' && second === undefined)) return true;
  if (second === undefined) {
    report({ rule: 'missing-value', at: fields.at, facts: { key: oneOf.join(' or '), where: fields.where } });
    return false;
  }
  const at = fields.keyPlace(second);
  const expected = `either ${first} or ${second}, not both`;
  report({ rule: 'unexpected-value', at, facts: { key: second, expected, actual: shown(at) } });
  return false;
}
