import { languageOf, wordsIn } from '../../project/language.ts';
import type { Project, Step } from '../../project/model.ts';
import type { Reference } from '../../project/prose/reference.ts';
import { membersOf } from '../../project/prose/word-finder.ts';
import type { Place } from '../../project/source.ts';
import { referencesTo, speaksIn, speaksOf } from '../mentions.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly layer: string;
  readonly base: string;
  /** The step in which its base is first named, if it is a later one, and where. */
  readonly later?: string;
  readonly laterAt: Place;
};

export const layerBeforeBase: Rule<Facts> = {
  severity: 'warning',
  summary: 'No layer is stuck on before its base is there.',
  why: 'Anyone following the steps has nothing to stick it to yet. Cutting, stamping or joining pieces beforehand is fine, and so is a pair that is stuck together first and then put on its base.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5 }\nmat: { stock: cream, cut: 3 x 4, on: card }\nlabel: { stock: cream, cut: 2 x 1, on: mat }',
    body: '## Label it\nStick on the :piece[label].\n\n## Add the border\nStick the :piece[mat] to the :piece[card].\n',
    blames: 'label',
  },
  passes: { with: 'Stamp the', insteadOf: 'Stick on the' },
  ownEditionOnly: true,
  *check({ workspace, project, shapes }) {
    const sticking = stickingIn(languageOf(project, workspace.site));
    for (const { piece } of shapes.layers) {
      const [layer, base] = [piece.id.value, piece.on?.value.piece ?? ''];
      const found = stuckBefore(layer, base, project, sticking);
      if (found) yield { at: found.stuck.of.at, facts: { layer, base, ...found.later } };
    }
  },
  say: ({ layer, base, later, laterAt }) => ({
    message: `${layer} is stuck on here, but ${base}, which it lies on, comes only ${later === undefined ? 'after it' : `in the step ${quote(later)}`}`,
    remedy: `stick ${base} on first, or say here that ${layer} goes on it`,
    notes: [{ message: `${base} is first named here`, at: laterAt }],
  }),
};

type StuckBefore = { readonly stuck: Reference; readonly later: Pick<Facts, 'later' | 'laterAt'> };

/** Where a layer is stuck on in a step before the first that speaks of its base. */
function stuckBefore(
  layer: string,
  base: string,
  { steps }: Project,
  sticking: Sticking,
): StuckBefore | undefined {
  const first = steps.findIndex((step) => speaksOf(base, step));
  const step = steps[first];
  const [named] = step ? referencesTo(base, step) : [];
  if (!step || !named) return undefined;
  const stuck = steps
    .slice(0, first)
    .flatMap((before) => referencesTo(layer, before))
    .find((reference) => isStuckOn(reference, sticking));
  if (stuck) return { stuck, later: { later: step.title.value, laterAt: named.of.at } };
  return stuckWithin(layer, base, step, sticking);
}

/** Where a layer is stuck on, and its base, which nothing before it names, only behind it in the same step. */
function stuckWithin(layer: string, base: string, step: Step, sticking: Sticking): StuckBefore | undefined {
  const [named] = referencesTo(base, step);
  const [stuck] = referencesTo(layer, step);
  if (!named || named.kind === 'reveal' || !isStuckOn(named, sticking)) return undefined;
  if (!stuck || stuck.of.at.start > named.of.at.start || !isStuckOn(stuck, sticking)) return undefined;
  const texts = step.prose.texts.filter(({ at }) => at.end <= stuck.of.at.start);
  return speaksIn(base, texts) ? undefined : { stuck, later: { laterAt: named.of.at } };
}

/** The words for sticking something on, in the language of a sheet: up to the piece, and from it on. */
type Sticking = { readonly before: RegExp; readonly behind: RegExp };

function stickingIn(language: string): Sticking {
  const [verbs, between, behind] = wordsIn(language, 'reads-sticks').split('|').map(eitherCase);
  return {
    before: new RegExp(`(?<!\\p{L})(?:${verbs || NEVER})\\s+(?:(?:${between || NEVER})\\s*)*:\\w+\\[$`, 'u'),
    behind: new RegExp(`^\\](?:\\{[^}]*\\})?\\s+(?:${behind || NEVER})(?!\\p{L})`, 'u'),
  };
}

/** What no text matches. */
const NEVER = '(?!)';

/** A list of words as a pattern; one with a small letter may begin a sentence. */
function eitherCase(words: string): string {
  const patterns = membersOf(words).map((word) => {
    const [first = '', rest] = [word[0], word.slice(1).replaceAll(' ', '\\s+')];
    return `[${first}${first.toUpperCase()}]${rest}`;
  });
  return patterns.join('|');
}

/**
 * Whether a step says of a piece that it is stuck on: by the border that it leaves, or by a verb at its side, but not by
 * "tape to the", where something is stuck to the piece.
 */
function isStuckOn({ kind, of: { at } }: Reference, { before, behind }: Sticking): boolean {
  const { text } = at.file;
  if (kind === 'reveal') return true;
  return (
    before.test(text.slice(Math.max(0, at.start - 80), at.start)) ||
    behind.test(text.slice(at.end, at.end + 80))
  );
}
