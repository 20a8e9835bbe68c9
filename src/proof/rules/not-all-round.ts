import type { Length } from '../../measure/length.ts';
import { languageOf, wordsIn } from '../../project/language.ts';
import { EDGES } from '../../project/net-as-written.ts';
import { everyProse } from '../../project/prose/prose.ts';
import { membersOf } from '../../project/prose/word-finder.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { quote, sayLength } from '../words.ts';

type Facts = OfLayer & {
  /** What shows on the left, the right, above and below. */
  readonly reveals: readonly Length[];
  /** The words that say that it shows all round. */
  readonly words: string;
};

export const notAllRound: Rule<Facts> = {
  severity: 'warning',
  summary: 'What a step says shows all round does show all round.',
  why: 'The sheet puts the border where the step asks for it. Of a layer whose border differs from side to side it says each side, and "all round" after that makes no sense. A border that is the same on three sides is printed as one number, and may be said to be all round.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nmat: { stock: cream, cut: 3 3/4 x 4 1/4, on: card }',
    body: '## Layer\nStick :piece[mat] on :piece[card], leaving :reveal[mat] all round.\n',
    blames: 'mat',
  },
  passes: { with: ':reveal[mat].', insteadOf: ':reveal[mat] all round.' },
  ownEditionOnly: true,
  *check({ workspace, project, shapes }) {
    const allRound = allRoundIn(languageOf(project, workspace.site));
    for (const { kind, of } of everyProse(project).flatMap(({ references }) => references)) {
      const { at, value } = of;
      const [, words] = allRound.exec(at.file.text.slice(at.end, at.end + 80)) ?? [];
      if (kind !== 'reveal' || words === undefined) continue;
      const layer = shapes.layers.find(({ piece }) => piece.id.value === value.piece);
      const reveals = layer ? differing(layer) : [];
      if (layer && reveals.length > 0) yield { at, facts: { ...ofLayer(project, layer), reveals, words } };
    }
  },
  say: ({ layer, baseName, unit, reveals, words }) => {
    const [left = '', right = '', top = '', bottom = ''] = reveals.map((length) => sayLength(length, unit));
    return {
      message: `${layer} does not leave the same of ${baseName} to show ${words}, but ${left} on the left, ${right} on the right, ${top} above and ${bottom} below`,
      remedy: `leave out ${quote(words)}, for the sheet says each side; or cut or place ${layer} so that all are the same`,
    };
  },
};

const MOST_SIDES = 3;

/**
 * What shows on each side of an upright rectangle on another; nothing where that is said as one border, nor of a layer that
 * passes its base and is not meant to, which is told of already.
 */
function differing({ reveals, turn, border, piece }: Layer): readonly Length[] {
  if (border || turn % 90 !== 0) return [];
  const all = EDGES.map((side) => reveals[side]);
  if (!piece.overhang && all.some(({ sign }) => sign < 0)) return [];
  const isUsual = all.some((one) => all.filter((other) => other.equals(one)).length >= MOST_SIDES);
  return isUsual ? [] : all;
}

/** The words for all round in a language, right behind a reference. */
function allRoundIn(language: string): RegExp {
  const words = membersOf(wordsIn(language, 'reads-all-round')).map((each) => each.replaceAll(' ', '\\s+'));
  return new RegExp(`^\\]\\s+(${words.join('|') || '(?!)'})(?!\\p{L})`, 'iu');
}
