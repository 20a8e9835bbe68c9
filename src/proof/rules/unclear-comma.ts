import type { Length } from '../../measure/length.ts';
import { type At, type Place, textAt } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import { isWithin } from '../sentences.ts';
import { quote } from '../words.ts';

/** The words; whether two positions may well be meant there, for no decimal is written so. */
type Facts = { readonly written: string; readonly mayBeTwo: boolean };

export const unclearComma: Rule<Facts> = {
  severity: 'error',
  summary: 'In a list of positions, it is clear which commas are decimal ones.',
  why: 'In a list, a comma leads on to the next number: `[2,5, 10,5]` is four positions, not two. This is checked where a sheet is measured in metric and only some commas of a list have a space after them, or where the only comma of a list has none.',
  fails: {
    sheet:
      '---\ntitle: A card to try\nmeasurements:\n  unit: cm\n  pieces:\n    card: { cut: 21 x 10, score: [{ from: left, at: [2,5, 10] }] }\n---\n## Score\nTake :piece[card].\n',
    blames: '2,5',
  },
  passes: { with: '2.5', insteadOf: '2,5' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    if (project.unit === 'in') return;
    for (const { body } of project.pieces.values()) {
      const lists = body.kind === 'net' ? body.score : [];
      for (const at of lists.flatMap((list) => unclearIn(list.at))) {
        const isWrong = shapes.findings.some((found) => found.at && isWithin(found.at, at));
        yield { at, facts: { written: textAt(at), mayBeTwo: !isWrong && isRound(at) && isRising(at) } };
      }
    }
  },
  say: ({ written, mayBeTwo }) => ({
    ...(mayBeTwo && { severity: 'warning' }),
    message: `${quote(written)} is read as two positions`,
    remedy: `write ${quote(written.replace(',', '.'))} if it is one, or put a space after the comma`,
  }),
};

/** Nobody writes 5.10 for 5.1. */
function isRound(place: Place): boolean {
  return /,\d+0(?!\d)/u.test(textAt(place));
}

function isRising(place: Place): boolean {
  const [first = 0, second = 0] = textAt(place).match(/\d+/gu)?.map(Number) ?? [];
  return first < second;
}

/** The pairs that only a comma divides, in a list whose other commas have a space after them or that has no other. */
function unclearIn(positions: readonly At<Length>[]): readonly Place[] {
  const pairs = positions.slice(1).flatMap(({ at }, index): Place[] => {
    const before = positions[index]?.at;
    return before ? [{ ...at, start: before.start }] : [];
  });
  const isTight = (place: Place): boolean => /^\d+,\d{1,2}(?!\d)(?:\s*[a-z]+)?$/iu.test(textAt(place));
  return pairs.length > 1 && pairs.every(isTight) ? [] : pairs.filter(isTight);
}
