import type { FormAsWritten, FormGrammar, FormParameter, FormSetting } from './form-grammar.ts';
import { type Key, made, type Value } from './grammar.ts';
import { exactlyOne, needed, optional, together } from './keys.ts';
import type { Reader } from './reader.ts';
import type { At } from './source.ts';
import { asChoice, asCount, asLengths, asText, unitWritten } from './values.ts';
import type { YamlNode } from './yaml-node.ts';

/** How many lengths each kind of parameter is written with; the others are no lengths. */
const LENGTHS: Partial<Record<FormParameter['kind'], 1 | 2 | 3>> = { length: 1, size: 2, volume: 3 };

const MOST_COUNTED = 99;

/** The form that a piece names, if there is one of that name. */
export function formNamed(name: YamlNode, { forms }: Reader): FormGrammar | undefined {
  const text = name.kind === 'text' ? name.text.trim().toLowerCase() : undefined;
  return forms.find((form) => form.name === text);
}

/** The name of a form, among those there are. */
export const asFormName: Value<At<string>> = made(asText, (name, _, node, reader) => {
  const form = formNamed(node, reader);
  if (form) return { value: form.name, at: name.at };
  const facts = { what: 'form', name: name.value, among: reader.forms.map((each) => each.name) };
  reader.report({ rule: 'unknown-reference', at: name.at, facts });
  return undefined;
});

/** What a form is told, and what it measures with. */
type FormSettings = Pick<FormAsWritten, 'settings' | 'ruler'>;

/** A form's settings, each read once and for all. */
export function settingsOf({ parameters, oneOf }: FormGrammar): Key<FormSettings, false> {
  const keys = parameters.map((parameter): [string, Key<FormSetting, false>] => {
    const { key, required, says } = parameter;
    const setting = optional(asSetting(parameter), says);
    return [key, required ? needed(setting) : setting];
  });
  const choice = oneOf && { 'one of': exactlyOne(oneOf) };
  return together({ ...Object.fromEntries(keys), ...choice }, (read, reader) => {
    const settings = new Map<string, FormSetting>(Object.entries(read));
    const measured = [...settings.values()].find((setting) => setting.kind === 'lengths');
    const last = measured?.lengths.at(-1);
    const unit = last ? unitWritten(last, reader) : reader.unit;
    return { settings, ruler: unit === 'in' ? 'in' : 'mm' };
  });
}

function asSetting({ kind, choices = [] }: FormParameter): Value<FormSetting> {
  const count = LENGTHS[kind];
  if (count !== undefined)
    return made(asLengths(count), (lengths, { at }) => ({ kind: 'lengths', lengths, at }));
  if (kind === 'count')
    return made(asCount(1, MOST_COUNTED), ({ value, at }) => ({ kind: 'count', count: value, at }));
  return made(asChoice(choices), ({ value, at }) => ({ kind: 'word', word: value, at }));
}
