import type { Face } from '../../project/ref.ts';
import type { Place } from '../../project/source.ts';
import { type Astray, gluedAstray } from '../../shape/stacking/blocked-glue.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayList, sayPanels } from '../words.ts';

type Facts = OfPiece & Omit<Astray, 'mates' | 'fold'> & { readonly glued?: Place };

export const glueOtherSide: Rule<Facts> = {
  severity: 'error',
  summary: 'Two panels that stick together are folded to the same side of the panel between them.',
  why: 'If a flap is folded away from you and the back toward you, the front is between them, and no glue reaches through it. One of the two folds goes the wrong way.',
  fails: {
    pieces: `envelope:
  stock: cream
  cut: 7 1/2 x 8 1/2
  score:
    - { from: left, at: [3/4, 6 3/4] }
    - { from: top, at: [1, 4 3/4] }
  panels: { front: B2, back: B3, flap: B1, left: A2, right: C2 }
  trim: [A1, C1, A3, C3]
  folds: { A|B: valley 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { left: back, right: back }`,
    blames: 'A|B: valley 180',
  },
  passes: { with: 'A|B: mountain 180', insteadOf: 'A|B: valley 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { mates, fold, ...astray } of gluedAstray(stackOf(sheet.net, sheet.caliper.mm))) {
        const glued = mates[0]?.at;
        const facts = { ...sheet.of, ...astray, ...(glued && { glued }) };
        yield { at: foldWords(sheet, fold), facts };
      }
    }
  },
  say: ({ piece, panels, face, around, others, isEither, glued }) => {
    const otherFace = face === 'outside' ? 'inside' : 'outside';
    const [mates, names] = [sayList(others), sayList(panels)];
    const [are, they] = panels.length > 1 ? ['are', 'they are'] : ['is', 'it is'];
    const other = isEither ? `; or else ${mates}, ${sayTurn(otherFace)}` : '';
    return {
      message: `${sayPanels(piece, panels)} ${are} to stick to ${mates}, but ${they} folded onto the ${face} of ${around} and ${mates} onto the ${otherFace}: ${around} lies between them`,
      remedy: `fold ${names} the other way, ${sayTurn(face)}${other}`,
      ...(glued && { notes: [{ message: `${they} to be stuck here`, at: glued }] }),
    };
  },
};

/** How what lies on a face is brought to the other one. */
function sayTurn(face: Face): string {
  return face === 'outside' ? 'mountain instead of valley' : 'valley instead of mountain';
}
