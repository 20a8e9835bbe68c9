import { allergensHeld, type Caution, cautionsFor } from '../handout/cautions.ts';
import type { Setting } from '../handout/setting.ts';

/** A caution as short as it can be said aloud. */
export type SpokenCaution = { readonly heading: string; readonly text: string };

const SHORT: Readonly<Record<Caution['id'], string>> = {
  blades: 'cue-caution-blades',
  'hot-glue': 'cue-caution-hot-glue',
  heat: 'cue-caution-heat',
  press: 'cue-caution-press',
  solvents: 'cue-caution-solvents',
  flames: 'cue-caution-flames',
  'small-parts': 'cue-caution-small-parts',
  food: 'cue-caution-food',
  allergens: 'cue-caution-allergens',
};

/** The very cautions of the sheet. */
export function spokenCautions({ project, voice }: Setting): readonly SpokenCaution[] {
  const allergens = allergensHeld(project, voice);
  return cautionsFor(project, voice).map(({ id, heading }) => ({
    heading,
    text: voice.say(SHORT[id], { allergens }),
  }));
}
