import { findLacking, frontmatterIn } from '../../project/letters.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = {
  /** Each once, in the order of the sheet. */
  readonly characters: readonly string[];
  /** Whether the settings name a font already. */
  readonly hasFont: boolean;
};

/** More than a reader would compare one by one. */
const MOST_NAMED = 12;

export const missingLetters: Rule<Facts> = {
  severity: 'warning',
  summary:
    'Every character of a sheet, of `site.yaml` and of shared files is in the typeface, or in the font that `site.yaml` names.',
  why: 'Where nobody has a shape for a character, paper shows an empty box or nothing at all, and a heading in Japanese is gone without a word. A comment in the settings is not printed and may say anything.',
  fails: { body: '## Fold the lid 折り', blames: '折り' },
  passes: { with: '(twice)', insteadOf: '折り' },
  ownEditionOnly: true,
  *check({ workspace, project: { file } }) {
    const found = findLacking(file, workspace.site.font, frontmatterIn(file.text));
    if (found) yield found;
  },
  say: ({ characters, hasFont }) => {
    const named = characters.slice(0, MOST_NAMED);
    const rest = characters.length - named.length;
    const said = sayList(rest > 0 ? [...named, `${rest} more`] : named, 'and');
    return {
      message: `${hasFont ? 'neither the typeface nor your font has' : 'the typeface does not have'} ${said}: paper may show an empty box, or nothing`,
      remedy: hasFont
        ? 'name a font that has them in your settings, or write it in other characters'
        : 'name a font that has them in your settings, such as font: fonts/my-font.ttf, or write it in other characters',
    };
  },
};
