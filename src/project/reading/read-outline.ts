import type { FormSetting } from '../grammar/form-grammar.ts';
import { type Group, made, type Value } from '../grammar/grammar.ts';
import { optional, together } from '../grammar/keys.ts';
import type { OutlineGrammar, ReadyOutline } from '../grammar/outline-grammar.ts';
import type { Reader } from '../grammar/reader.ts';
import { asChoice, asText } from '../grammar/values.ts';
import { asSetting } from './read-setting.ts';

/** What has no outline of its own; it may be said all the same. */
const RECTANGLE = 'rectangle';

/** What was read behind the keys of an outline: nothing of a rectangle. */
export type WrittenOutline = { readonly outline?: ReadyOutline };

/**
 * `shape:` and what may be said of one: the keys of whatever has an outline, a flat piece or an opening. In the group
 * there is no outline where nothing was written, and no group where something in it has to be reported.
 */
export function outlineKeys(outlines: readonly OutlineGrammar[]): Group<WrittenOutline> {
  const parameters = outlines.flatMap((outline) => outline.parameters);
  const settings = parameters.map(
    (parameter) => [parameter.key, optional(asSetting(parameter), parameter.says)] as const,
  );
  const shape = optional(asShape(outlines), 'Its outline, if it is not a rectangle: see *Outlines*.');
  const make = (
    { shape: name, ...read }: Readonly<Record<string, FormSetting | undefined>>,
    reader: Reader,
  ): WrittenOutline | undefined => {
    const given = Object.entries(read).flatMap(([key, setting]) =>
      setting ? [[key, setting] as const] : [],
    );
    const outline = outlines.find((each) => name?.kind === 'word' && each.name === name.word);
    const strays = given.filter(([key]) => !outline?.parameters.some((parameter) => parameter.key === key));
    for (const stray of strays) reportStray(stray, outline?.name, outlines, reader);
    if (strays.length > 0) return undefined;
    if (!name || !outline) return {};
    return {
      outline: { kind: 'ready', shape: { value: outline.name, at: name.at }, settings: new Map(given) },
    };
  };
  return together(Object.fromEntries([['shape', shape], ...settings]), make);
}

/** Reports a setting of another outline than the one it stands beside. */
function reportStray(
  [key, { at }]: readonly [string, FormSetting],
  shape = RECTANGLE,
  outlines: readonly OutlineGrammar[],
  { report }: Reader,
): void {
  const owner = outlines.find(({ parameters }) => parameters.some((parameter) => parameter.key === key));
  const facts = { misfit: 'setting of another shape', actual: key, other: owner?.name ?? '', shape } as const;
  report({ rule: 'unexpected-value', at, facts });
}

/** The name of an outline, among those there are. */
function asShape(outlines: readonly OutlineGrammar[]): Value<FormSetting> {
  const among = [RECTANGLE, ...outlines.map(({ name }) => name)];
  const value = made(asText, ({ value: name, at }, { reader }): FormSetting | undefined => {
    const words = name.toLowerCase().replace(/[\s-]+/gu, ' ');
    if (among.includes(words)) return { kind: 'word', word: words, at };
    reader.report({ rule: 'unknown-reference', at, facts: { what: 'shape', name, among } });
    return undefined;
  });
  return { ...value, schema: asChoice(among).schema };
}
