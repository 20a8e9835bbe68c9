import type { Project, Prose } from '../project/model.ts';
import { wordFinder } from '../project/prose/word-finder.ts';
import { type Place, textAt } from '../project/source.ts';
import type { KnownMeasure } from './measured.ts';
import { isWithin, type Sentence, sentenceRound } from './sentences.ts';

/** What a number in a sentence is about. */
type Subject = {
  /** The pieces that the sentence itself names, in their order. */
  readonly pieces: readonly string[];
  /** Whether something measured may be meant. */
  readonly mayMean: (measure: KnownMeasure) => boolean;
};

/**
 * What the sentence round a place is about: the pieces it names, in a directive or in a word with its article, which
 * makes a piece of a common word: `the cover`, not `cover the tab`. Undefined where it names none. A number in it is a
 * measure of one of them, of what they lie on, or of a piece that the paragraph has named before.
 */
export function subjectOf(
  place: Place,
  sentences: readonly Sentence[],
  { references }: Prose,
  { pieces }: Project,
  articles: string,
): Subject | undefined {
  const sentence = sentenceRound(place, sentences);
  if (!sentence) return undefined;
  const ids = [...pieces.keys()];
  const referredIn = (where: Place): readonly string[] =>
    references.flatMap(({ kind, of }) =>
      kind !== 'drawing' && isWithin(of.at, where) ? of.value.piece : [],
    );
  const inWords = (where: Place, before = ''): readonly string[] =>
    ids.filter((id) => new RegExp(before + wordOf(id, pieces).source, 'iu').test(textAt(where)));
  const article = `${wordFinder(articles).source}\\s+`;
  const named = [...new Set([...referredIn(sentence.at), ...inWords(sentence.at, article)])];
  if (named.length === 0) return undefined;
  const earlier = new Set([...named, ...referredIn(sentence.upTo), ...inWords(sentence.upTo)]);
  return { pieces: named, mayMean: (measure) => mayMean(measure, earlier, pieces) };
}

/**
 * What a size right behind a piece is about, "Cut :piece[mat] at 4 x 6 in": that piece, and nothing that it lies on.
 * `sizing` are the words that may stand between.
 */
export function sizedBy(place: Place, { references }: Prose, sizing: string): Subject | undefined {
  const between = new RegExp(`^\\](?:\\{[^}\\n]*\\})?\\s+${wordFinder(sizing).source}\\s+$`, 'iu');
  const [sized] = references.filter(({ kind, of: { at } }) => {
    const text = at.end < place.start ? at.file.text.slice(at.end, place.start) : '';
    return kind === 'piece' && between.test(text);
  });
  if (!sized) return undefined;
  const { piece } = sized.of.value;
  return { pieces: [piece], mayMean: ({ of, kind }) => of === piece && kind !== 'reveal' };
}

/** Finds a piece by its short name or by what it is called on paper, one or several of it. */
function wordOf(id: string, pieces: Project['pieces']): RegExp {
  const names = [id.replace(/[-_]+/gu, ' '), pieces.get(id)?.name?.value ?? ''].filter(Boolean);
  return wordFinder(names.map((name) => `${name}, ${name}s`).join(', '));
}

/**
 * Of a piece that is named everything, and of its base the measures. The border of a piece under another is another
 * matter, unless what it lies on is named too; that of a layer on a piece that lies on nothing is that piece's.
 */
function mayMean(
  { of, on, kind }: KnownMeasure,
  named: ReadonlySet<string>,
  pieces: Project['pieces'],
): boolean {
  if (of === undefined) return kind !== 'tool';
  const bases = new Set([...named].flatMap((id) => pieces.get(id)?.on?.value.piece ?? []));
  if (kind !== 'reveal') return named.has(of) || bases.has(of);
  if (on !== undefined && named.has(on) && !pieces.get(on)?.on) return true;
  return named.has(of) && (!bases.has(of) || (on !== undefined && named.has(on)));
}
