import type { Setting } from '../handout/setting.ts';
import { supplyWords } from '../handout/supplies.ts';
import { pieceNamed } from '../words/names.ts';
import { firstUses } from './taken-up.ts';

/**
 * What is laid out, in the order the steps first take it up: the pieces of a step in one row, then its supplies. The supplies
 * of which no step says anything come last, as they are listed.
 */
export function laidOut(setting: Setting): readonly object[] {
  const { project, voice } = setting;
  return firstUses(project).flatMap(({ step, pieces, supplies }) => {
    const names = pieces.map((id) => pieceNamed(id, voice.say));
    return [
      ...(names.length > 0 ? [{ item: voice.list(names), step }] : []),
      ...supplies.map((supply) => ({ ...supplyWords(setting, supply), step })),
    ];
  });
}
