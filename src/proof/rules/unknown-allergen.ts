import { languageOf } from '../../project/language.ts';
import { nearestName } from '../../project/nearest.ts';
import { allergensIn, plainAllergen } from '../allergens.ts';
import type { Rule } from '../rule.ts';
import { quote, sayList } from '../words.ts';

type Facts = {
  readonly name: string;
  /** The names there are in the sheet's language. */
  readonly among: readonly string[];
  /** Other names that are taken, as far as a slip can be told from another short word. */
  readonly also: readonly string[];
};

export const unknownAllergen: Rule<Facts> = {
  severity: 'error',
  summary:
    'Every allergen is one of the US nine or the EU fourteen, by its name in English or in the language of the sheet.',
  why: 'People who must avoid something look for its usual name. A misspelled one is missed, and that can hurt somebody. What is in neither list can go in a step or a caution.',
  fails: {
    more: 'holds: { item: Biscuits, count: 4, food: yes, allergens: [milk, penuts] }',
    blames: 'penuts',
  },
  passes: { with: 'peanuts', insteadOf: 'penuts' },
  ownEditionOnly: true,
  *check({ workspace, project }) {
    const { allergens = [] } = project.holds ?? {};
    if (allergens.length === 0) return;
    const { names, others } = allergensIn(languageOf(project, workspace.site));
    const known = new Set(
      [...names, ...others, ...allergensIn('en').names, ...allergensIn('en').others].map(plainAllergen),
    );
    for (const { value: name, at } of allergens) {
      if (!known.has(plainAllergen(name)))
        yield { at, facts: { name, among: names, also: others.filter(({ length }) => length > 4) } };
    }
  },
  say: ({ name, among, also }) => {
    const written = plainAllergen(name);
    const nearest =
      nearestName(written, [...among, ...also]) ??
      among.find((each) => plainAllergen(each).includes(written));
    return {
      message: `${quote(name)} is not one of the US nine or EU fourteen allergens`,
      remedy: `write ${nearest === undefined ? `one of these: ${sayList(among, 'or')}` : quote(nearest)}`,
    };
  },
};
