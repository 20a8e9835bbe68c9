import type { ProseSetting } from '../handout/markdown-handlers.ts';
import { measuredText } from '../handout/measured-text.ts';
import { type Refer, referrer } from '../handout/references.ts';
import type { Setting } from '../handout/setting.ts';
import { measuresFor } from '../words/measures.ts';

/** What is said aloud is said in one unit, the one that leads; cuts and scores stand in both. */
export function spokenSetting(setting: Setting): Setting {
  const { voice, measures } = setting;
  return { ...setting, measures: measuresFor(voice, [measures.leading], false) };
}

/** How a note or a heading is set on the card: pictures and drawings have a place of their own there. */
export function cueProse(setting: Setting): ProseSetting {
  const { project, voice, editions, measures } = setting;
  const refer = referrer(editions, measures, voice);
  return {
    voice,
    source: project.file.text,
    headings: 4,
    // The scores stand in their list alone.
    refer: (kind, name) => (kind === 'scores' ? voice.phrase('scores-listed', {}) : refer(kind, name)),
    measured: (text) => measuredText(text, setting),
    draw: () => undefined,
    picture: () => undefined,
  };
}

/** How an action is said: pieces by their names alone, for their sizes stand in the cut list. */
export function spokenProse(setting: Setting): ProseSetting {
  const prose = cueProse(spokenSetting(setting));
  const refer: Refer = (kind, name) => {
    // A second mention is the name alone.
    if (kind === 'piece') prose.refer(kind, name);
    return prose.refer(kind, name);
  };
  return { ...prose, refer };
}
