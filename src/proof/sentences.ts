import type { Nodes } from 'mdast';
import type { Prose } from '../project/model.ts';
import { isDirective } from '../project/prose/directives.ts';
import { childrenOf, placeOf } from '../project/prose/markdown.ts';
import { indexUpTo, type Place, type SourceFile, textAt } from '../project/source.ts';

/** A sentence as it stands in a sheet. */
export type Sentence = {
  readonly at: Place;
  /** Its paragraph up to its end. */
  readonly upTo: Place;
  /** It is for the demonstrator alone. */
  readonly isForHost: boolean;
};

/** A stop, with what closes after it, before a space and what may begin a sentence. */
const STOP = /[.!?…]["”’»)*_\]]*\s+(?=["“„«(*_[:]*\p{Lu}|:{1,3}[a-z])/gu;

/** The sentences of a stretch of Markdown, in the order they are read. */
export function sentencesOf({ nodes }: Pick<Prose, 'nodes'>, file: SourceFile): readonly Sentence[] {
  return nodes.flatMap((node) => sentencesIn(node, file, false));
}

function sentencesIn(node: Nodes, file: SourceFile, inHost: boolean): readonly Sentence[] {
  const isForHost = inHost || (isDirective(node) && node.name === 'host');
  if (node.type !== 'paragraph' && node.type !== 'heading' && node.type !== 'tableCell') {
    return childrenOf(node).flatMap((child) => sentencesIn(child, file, isForHost));
  }
  const { start, end } = placeOf(node, file);
  const text = textAt({ file, start, end });
  const stops = [...text.matchAll(STOP)].map(({ 0: stop, index }) => index + stop.length);
  const ends = [...stops, text.length];
  return ends.map((to, index) => ({
    at: { file, start: start + (ends[index - 1] ?? 0), end: start + to },
    upTo: { file, start, end: start + to },
    isForHost,
  }));
}

/** The sentence that a place lies in; sentences are in the order they are read. */
export function sentenceRound(place: Place, sentences: readonly Sentence[]): Sentence | undefined {
  const sentence =
    sentences[indexUpTo(place.start, sentences.length, (index) => sentences[index]?.at.start ?? 0)];
  return sentence && isWithin(place, sentence.at) ? sentence : undefined;
}

/** Whether a place lies within another of the same file. */
export function isWithin(inner: Place, outer: Place): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}
