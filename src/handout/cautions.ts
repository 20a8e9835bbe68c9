import type { Holds, Project } from '../project/model.ts';
import { wordFinder } from '../project/prose/word-finder.ts';
import type { Voice } from '../words/voice.ts';

/** The usual cautions, in the order they are given. */
const CAUTIONS = [
  'blades',
  'hot-glue',
  'heat',
  'press',
  'solvents',
  'flames',
  'small-parts',
  'food',
  'allergens',
] as const;

type CautionId = (typeof CAUTIONS)[number];

/** One usual caution: a heading and a few sentences. */
type Caution = { readonly id: CautionId; readonly heading: string; readonly text: string };

/** What calls for a caution, besides a supply that goes by one of its names. Common practice, no source. */
const CALLED_FOR: Readonly<Partial<Record<CautionId, (project: Project) => boolean>>> = {
  // Nothing is made here without being cut.
  blades: ({ pieces }) => pieces.size > 0,
  press: ({ supplies }) => supplies.some(({ kind }) => kind.value === 'die'),
  food: (project) => heldIn(project).some(({ food, allergens }) => food || allergens.length > 0),
  allergens: (project) => heldIn(project).some(({ allergens }) => allergens.length > 0),
};

/** The cautions a project calls for by its supplies and what it holds, in a fixed order. */
export function cautionsFor(project: Project, voice: Voice): readonly Caution[] {
  const allergens = allergensHeld(project, voice);
  return CAUTIONS.filter((id) => CALLED_FOR[id]?.(project) || isMentioned(id, project, voice)).map((id) => ({
    id,
    heading: voice.say(`caution-${id}`),
    text: voice.say(`caution-${id}-text`, { allergens }),
  }));
}

/** What a food may contain, in the sheet's language where it is one of the allergens that the law names. */
export function allergensHeld(project: Project, { say, list }: Voice): string {
  const allergens = heldIn(project).flatMap((holds) => holds.allergens);
  const names = allergens.map(({ value }) => {
    const key = `allergen-${value.trim().toLowerCase().replace(/\s+/gu, '-')}`;
    return say.has(key) ? say(key) : value;
  });
  return list([...new Set(names)]).toString();
}

/** What a project holds in any of its variants. */
function heldIn({ holds, others }: Project): readonly Holds[] {
  return [holds, ...others.map((other) => other.holds)].flatMap((each) => each ?? []);
}

/**
 * Whether a supply, what may take its place, or what is held goes by a name of the danger in the sheet's language:
 * better one caution too many than one too few.
 */
function isMentioned(id: CautionId, project: Project, { say }: Voice): boolean {
  const { supplies } = project;
  if (!say.has(`names-${id}`)) return false;
  const [called, harmless] = [wordFinder(say(`names-${id}`)), wordFinder(say('names-harmless'))];
  const supplied = supplies.flatMap(({ item, instead }) => [item.value, instead?.value ?? '']);
  const names = id === 'flames' ? [...supplied, ...heldIn(project).map(({ item }) => item)] : supplied;
  return names.some((name) => called.test(name) && !(id === 'flames' && harmless.test(name)));
}
