import type { Project, Supply } from '../project/model.ts';
import type { Voice } from './voice.ts';

/** One usual caution: a heading and a few sentences. */
export type Caution = { readonly id: CautionId; readonly heading: string; readonly text: string };

type CautionId =
  | 'blades'
  | 'hot-glue'
  | 'heat'
  | 'press'
  | 'solvents'
  | 'flames'
  | 'small-parts'
  | 'food'
  | 'allergens';

/** What calls for a caution. Common practice, no source: better one caution too many than one too few. */
const CALLED_FOR: readonly { readonly id: CautionId; readonly by: (project: Project) => boolean }[] = [
  // Nothing is made here without being cut.
  { id: 'blades', by: ({ pieces, supplies }) => pieces.size > 0 || named(supplies, /knife|blade|scalpel/iu) },
  { id: 'hot-glue', by: ({ supplies }) => named(supplies, /hot[- ]?(?:melt|glue)|glue gun/iu) },
  {
    id: 'heat',
    by: ({ supplies }) =>
      named(
        supplies,
        /heat (?:gun|tool)|(?:embossing|craft) (?:gun|iron)|\biron\b|laminator|soldering|wood ?burn/iu,
      ),
  },
  {
    id: 'press',
    by: ({ supplies }) =>
      supplies.some(({ kind }) => kind.value === 'die') || named(supplies, /die[- ]cut|\bpress\b|roller/iu),
  },
  {
    id: 'solvents',
    by: ({ supplies }) =>
      named(
        supplies,
        /spray|solvent|lacquer|varnish|fixative|thinner|acetone|alcohol|spirits?\b|turpentine|(?:rubber|contact) cement/iu,
      ),
  },
  {
    id: 'flames',
    by: ({ supplies, holds }) =>
      named(supplies, FLAMES, FLAMELESS) || (holds !== undefined && burns(holds.item)),
  },
  {
    id: 'small-parts',
    by: ({ supplies }) =>
      named(
        supplies,
        /\bbrads?\b|bead|button|magnet|eyelet|grommet|\beyes\b|gem(?:stone)?s?\b|sequin|rhinestone|charm|\bbells?\b|split pin/iu,
      ),
  },
  { id: 'food', by: ({ holds }) => holds?.food === true || (holds?.allergens.length ?? 0) > 0 },
  { id: 'allergens', by: ({ holds }) => (holds?.allergens.length ?? 0) > 0 },
];

const FLAMES = /candle|tea ?light|lighter|\bmatch(?:es)?\b|flame/iu;
const FLAMELESS = /battery|\bled\b|electric|flameless/iu;

/** The cautions a project calls for by its supplies and what it holds, in a fixed order. */
export function cautionsFor(project: Project, voice: Voice): readonly Caution[] {
  const allergens = voice.list(project.holds?.allergens.map(({ value }) => value) ?? []).toString();
  return CALLED_FOR.filter(({ by }) => by(project)).map(({ id }) => ({
    id,
    heading: voice.say(`caution-${id}`),
    text: voice.say(`caution-${id}-text`, { allergens }),
  }));
}

/** Whether a supply, or what may take its place, goes by such a name. */
function named(supplies: readonly Supply[], pattern: RegExp, except?: RegExp): boolean {
  return supplies
    .flatMap(({ item, instead }) => [item.value, instead?.value ?? ''])
    .some((text) => pattern.test(text) && !except?.test(text));
}

function burns(item: string): boolean {
  return FLAMES.test(item) && !FLAMELESS.test(item);
}
