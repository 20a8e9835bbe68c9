import { nearestName } from '../../shape/nearest.ts';
import { ALLERGENS } from '../allergens.ts';
import type { Rule } from '../rule.ts';
import { quote, sayList } from '../words.ts';

export const unknownAllergen: Rule<{ readonly name: string }> = {
  severity: 'error',
  summary: 'Every allergen is one of the US nine or the EU fourteen, by its name there.',
  why: 'Whoever must avoid something looks for its usual name. A misspelt one is overlooked, and that can hurt. What is in neither list can be said in a step or a caution.',
  fails: {
    more: 'holds: { item: Biscuits, count: 4, food: yes, allergens: [milk, penuts] }',
    blames: 'penuts',
  },
  passes: { with: 'peanuts', insteadOf: 'penuts' },
  ownEditionOnly: true,
  *check({ project }) {
    for (const { value: name, at } of project.holds?.allergens ?? []) {
      if (!ALLERGENS.includes(plain(name))) yield { at, facts: { name } };
    }
  },
  say: ({ name }) => {
    const written = plain(name);
    const nearest = nearestName(written, ALLERGENS) ?? ALLERGENS.find((each) => each.includes(written));
    return {
      message: `${quote(name)} is no allergen of the US nine or the EU fourteen`,
      remedy:
        nearest === undefined ? `write one of these: ${sayList(ALLERGENS, 'or')}` : `write ${quote(nearest)}`,
    };
  },
};

function plain(name: string): string {
  return name.trim().toLowerCase();
}
