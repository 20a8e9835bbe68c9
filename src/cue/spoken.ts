import type { Setting } from '../handout/setting.ts';
import { measuresFor } from '../words/measures.ts';

/** What is said aloud is said in one unit, the one that leads; cuts and scores stand in both. */
export function spokenSetting(setting: Setting): Setting {
  const { voice, measures } = setting;
  return { ...setting, measures: measuresFor(voice, [measures.leading], false) };
}
