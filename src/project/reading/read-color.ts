import type { Value } from '../grammar/grammar.ts';
import { asMatch } from '../grammar/values.ts';
import type { At } from '../source.ts';

/** `#rgb` or `#rrggbb`, given as `#rrggbb` in lower case. One typed without quotes is a comment to YAML. */
export const asColor: Value<At<string>> = {
  ...asMatch('a color in quotes, such as "#6b7f5b"', /^#([0-9a-f]{3}|[0-9a-f]{6})$/iu, ([, digits = '']) => {
    const six = digits.length === 3 ? digits.replace(/./gu, '$&$&') : digits;
    return `#${six.toLowerCase()}`;
  }),
  reportNothing: ({ at: { file, end } }, { report }) => {
    const [line = ''] = file.text.slice(end).split(/\r\n|\r|\n/u, 1);
    const [before, actual] = /^\s*:\s*(#\S*)/u.exec(line) ?? [];
    if (before === undefined || actual === undefined) return false;
    const form = 'a color in quotes, such as "#6b7f5b": a bare # begins a comment';
    const at = { file, start: end + before.length - actual.length, end: end + before.length };
    report({ rule: 'unexpected-value', at, facts: { key: 'color', expected: form, actual } });
    return true;
  },
};
