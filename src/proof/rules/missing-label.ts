import { sheetWith } from '../example.ts';
import { languageName } from '../language-name.ts';
import { type Rule, wording } from '../rule.ts';

export const missingLabel: Rule = {
  id: 'missing-label',
  severity: 'note',
  summary: 'A language has a word for every label.',
  why: 'A translation may be older than the program. What it has no word for yet stands in English, so that nothing is missing from a sheet, and is named once for each language.',
  fails: { sheet: sheetWith({ head: 'lang: de' }), blames: 'de' },
  passes: { sheet: sheetWith({ head: 'lang: en' }) },
  fault: wording('missing-label', ({ language, keys }) => ({
    message: `there is no ${languageName(language)} yet for ${keys.join(', ')}: English stands there`,
    remedy: 'translate them as docs/adding-a-language.md tells',
  })),
};
