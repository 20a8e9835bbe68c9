import { workOutEditions } from '../../edition/edition.ts';
import { printDecimal } from '../../measure/print.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

/** The most lengths a message names. */
const MOST_NAMED = 3;

export const editionStrained: Rule<'edition-strained'> = {
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
  check: ({ project, shapes, report }: ProofContext) => {
    const { within, strained, deviation, editions } = workOutEditions(project, shapes);
    if (within) return;
    const name = editions.own === 'inch' ? 'metric' : 'inch';
    const unit = editions.own === 'inch' ? 'mm' : 'in';
    const named = strained.slice(0, MOST_NAMED).map(({ names, own, edition }) => {
      const [first = ''] = names;
      return `${first} ${sayLength(own, project.unit)} is ${sayLength(edition, unit)} there`;
    });
    const [first] = strained.flatMap(({ names }) => names);
    const piece = [...project.pieces.values()].find(({ id }) => first?.split(/[ .]/u)[0] === id.value);
    report({
      message: `the ${name} edition keeps equal lengths equal and lies up to ${printDecimal(deviation, 'mm', 1)} mm off: ${sayList(named)}`,
      remedy: 'leave it if the size does not matter, or choose lengths that repeat less often',
      ...(piece && { at: piece.id.at }),
    });
  },
};
