import { nearestName } from '../../project/nearest.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  /** As it stands in the sheet, on one line. */
  readonly written: string;
  readonly name: string;
  /** How each directive there is is written, by its name. */
  readonly forms: Readonly<Record<string, string>>;
};

export const unknownDirective: Rule<Facts> = {
  severity: 'warning',
  summary: 'What looks like a directive is one.',
  why: 'A slip such as `:pieces[front]` for `:piece[front]` is printed as it is, colon, brackets and all, on every handout. A time (`18:30`), or a colon in a sentence, is not a directive.',
  fails: {
    pieces: 'front: { stock: cream, cut: 3 x 4 }',
    body: '## Cut\nCut :piece[front] and put :pieces[front] aside.\n',
    blames: ':pieces[front]',
  },
  passes: { with: ':piece[front] aside', insteadOf: ':pieces[front] aside' },
  say: ({ written, name, forms }) => {
    const joined = written.replace(/\s+(?=[[{])/u, '');
    if (joined !== written && name in forms) {
      return {
        message: `${quote(written)} is printed as it is, because of the space in it`,
        remedy: `write it without the space: ${joined}`,
      };
    }
    const form = forms[nearestName(name, Object.keys(forms)) ?? ''];
    return {
      message: `${quote(written)} is not a directive, so it is printed as it is`,
      remedy:
        form === undefined
          ? `write one of: ${Object.values(forms).join(', ')}; or leave the colon out`
          : `write it as ${form}${form.startsWith('::') ? ', on a line of its own' : ''}`,
    };
  },
};
