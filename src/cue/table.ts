import { toString as textWithin } from 'mdast-util-to-string';
import { withoutHost } from '../handout/markdown-handlers.ts';
import type { Setting } from '../handout/setting.ts';
import { supplyWords } from '../handout/supplies.ts';
import type { Step, Supply } from '../project/model.ts';

/**
 * The supplies by the first place in the steps that names them, each with the number of that step. A tool that no step
 * names is in use from the start, as a trimmer is, and ink lies by the first stamp; the rest comes last.
 */
export function laidOut(setting: Setting): readonly object[] {
  const { project } = setting;
  const texts = project.steps.map(textOf);
  const named = project.supplies.map((supply) => ({ supply, use: firstUse(supply, texts) }));
  const stamping = named.find(({ supply, use }) => supply.kind.value === 'stamp' && use)?.use;
  return named
    .map(({ supply, use }) => ({ supply, use: use ?? (supply.kind.value === 'ink' ? stamping : undefined) }))
    .toSorted((a, b) => placeOf(a) - placeOf(b))
    .map(({ supply, use }) => ({ ...supplyWords(setting, supply), step: use && use.step + 1 }));
}

/** Where in the steps something is named first. */
type FirstUse = { readonly step: number; readonly offset: number };

/** More characters than a step has. */
const STEP = 1_000_000;

function placeOf({ supply, use }: { readonly supply: Supply; readonly use: FirstUse | undefined }): number {
  if (use) return use.step * STEP + use.offset;
  return supply.kind.value === 'tool' ? -1 : Number.MAX_SAFE_INTEGER;
}

/** What is read of a step; a picture's alternative tells of things that nobody needs. */
function textOf({ title, prose }: Step): string {
  const blocks = withoutHost(prose.nodes).map((node) => textWithin(node, { includeImageAlt: false }));
  return [title.value, ...blocks].join('\n');
}

/** The name that tells most decides: `score board` before `board`, `pencils` before `pencil`. */
function firstUse({ item }: Supply, texts: readonly string[]): FirstUse | undefined {
  for (const name of namesOf(item.value)) {
    for (const [step, text] of texts.entries()) {
      const offset = text.search(name);
      if (offset >= 0) return { step, offset };
    }
  }
  return undefined;
}

/** Words behind which a name only tells more of the thing, in the languages a sheet is labeled in. */
const MORE =
  /\s(?:and|for|from|in|of|with|aus|für|mit|und|avec|de|en|et|pour|con|para|y|met|uit|van|voor)\s/iu;

/** What a step may call a thing: its whole name, its last two words, its last word, two others side by side. */
function namesOf(item: string): RegExp[] {
  const [thing = item] = item.split(MORE);
  const words = thing.match(/[\p{L}\p{N}][\p{L}\p{N}'’-]*/gu) ?? [];
  const pairs = words.slice(1).map((word, index) => `${words[index]} ${word}`);
  const [last, ...others] = pairs.toReversed();
  const names = [words.join(' '), last, words.at(-1), ...others];
  return names.flatMap((name) => (name ? [asWord(name), asWord(name.replace(/s$/u, ''), '(?:e?s)?')] : []));
}

/** A whole word, whatever its ending. A word's letters, hyphens and apostrophes mean nothing to a pattern. */
function asWord(name: string, ending = ''): RegExp {
  return new RegExp(`(?<![\\p{L}\\p{N}])${name}${ending}(?![\\p{L}\\p{N}])`, 'iu');
}
