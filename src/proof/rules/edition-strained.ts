import { workOutEditions } from '../../edition/edition.ts';
import type { Length, Unit } from '../../measure/length.ts';
import { printDecimal } from '../../measure/print.ts';
import { startOf } from '../../project/source.ts';
import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

/** The most lengths a message names. */
const MOST_NAMED = 3;

type Facts = {
  /** The farthest that any length of the other edition lies off, and those that lie too far. */
  readonly deviation: Length;
  readonly strained: readonly { readonly name: string; readonly own: Length; readonly there: Length }[];
  readonly unit: Unit;
};

export const editionStrained: Rule<'edition-strained', Facts> = {
  id: 'edition-strained',
  severity: 'note',
  ownEditionOnly: true,
  summary: 'Every number of the other edition lies within 1 mm of the number as written.',
  why: 'The other edition keeps equal panels equal and sums true, so each rounding is repeated by every panel that is the same: twelve panels of 1 in are twelve times 25 mm. Where that adds up to more than a millimeter the shape still folds square, but it comes out a little smaller or larger than in the edition you wrote.',
  fails: {
    sheet: sheetWith({
      pieces:
        'strip: { stock: cream, cut: 10 x 2, score: [{ from: left, at: [1, 2, 3, 4, 5, 6, 7, 8, 9] }] }',
    }),
    blames: 'strip',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'strip: { stock: cream, cut: 2 x 2, score: [{ from: left, at: [1] }] }',
    }),
  },
  *check({ project, shapes }) {
    const { within, strained: beyond, deviation } = workOutEditions(project, shapes);
    if (within) return;
    const strained = beyond.map(({ names, own, edition }) => ({ name: names[0] ?? '', own, there: edition }));
    const piece = [...project.pieces.values()].find(
      ({ id }) => strained[0]?.name.split(/[ .]/u)[0] === id.value,
    );
    const at = piece?.id.at ?? startOf(project.file);
    yield { at, facts: { deviation, strained, unit: project.unit } };
  },
  say: ({ deviation, strained, unit }) => {
    const [edition, other] = unit === 'in' ? (['metric', 'mm'] as const) : (['inch', 'in'] as const);
    const named = strained
      .slice(0, MOST_NAMED)
      .map(({ name, own, there }) => `${name} ${sayLength(own, unit)} is ${sayLength(there, other)} there`);
    return {
      message: `the ${edition} edition keeps equal lengths equal and lies up to ${printDecimal(deviation, 'mm', 1)} mm off: ${sayList(named)}`,
      remedy: 'leave it if the size does not matter, or choose lengths that repeat less often',
    };
  },
};
