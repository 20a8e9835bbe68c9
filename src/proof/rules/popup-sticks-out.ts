import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Place } from '../../project/source.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { type CutPopUp, type OnStrip, onStrip, popUpsOf, strayFromCard } from '../pop-ups.ts';
import type { Evidence, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = CutPopUp['of'] & {
  /** A layer on the strip; none where the strip itself is too long. */
  readonly layer?: string;
  readonly by: Length;
  /** How far it reaches from the fold, or how long it is along that; and how far the closed card does. */
  readonly reach: Length;
  readonly room: Length;
  readonly way: 'away' | 'along';
};

export const popupSticksOut: Rule<Facts> = {
  severity: 'error',
  summary: 'A pop-up, with what is stuck on it, is hidden when the card is closed.',
  why: 'Closed, a pop-up lies flat in the card and reaches as far from the fold as its two slits are deep together, and a figure on it farther still. What sticks out shows from outside, and is bent in the envelope.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { pop-up: 2, depth: 2 1/4 } } }',
    blames: '2 1/4',
  },
  passes: { with: 'depth: 2', insteadOf: 'depth: 2 1/4' },
  *check(context) {
    for (const cut of popUpsOf(context)) {
      const strays = onStrip(cut, context.shapes).flatMap((each) => strayOf(cut, each) ?? []);
      // What lies on a strip that is too long sticks out with it.
      const [first] = strays.toSorted((a, b) => Number('layer' in a.facts) - Number('layer' in b.facts));
      if (first) yield first;
    }
  },
  say: ({ piece, opening, layer, by, reach, room, way, unit }) => {
    const [out, far, all] = [by, reach, room].map((length) => sayLength(length, unit));
    const what = layer === undefined ? `${piece}.${opening}` : `${layer}, on ${piece}.${opening},`;
    const message =
      way === 'away'
        ? `${what} sticks out of the closed card by ${out}: it reaches ${far} from the fold, and the card ${all}`
        : `${what} sticks out of the closed card by ${out}: it is ${far} along the fold, and the card ${all}`;
    const less = layer === undefined ? 'cut its slits less deep' : `cut ${layer} smaller, or move it`;
    return { message, remedy: `${less}, by ${out} or more in all` };
  },
};

function strayOf(cut: CutPopUp, on: OnStrip): Evidence<Facts> | undefined {
  const { of, caliper } = cut;
  const [most] = strayFromCard(cut, on).toSorted((a, b) => b.by - a.by);
  const ruler = rulerUnit(of.unit);
  const by = roundFolded(most?.by ?? 0, ruler);
  if (!most || !by.greaterThan(tolerance(caliper))) return undefined;
  const { way } = most;
  const [reach, room] = [roundFolded(most.reach, ruler), roundFolded(most.room, ruler)];
  const layer = on.layer && { layer: on.layer.id.value };
  return { at: placeOf(cut, on, way), facts: { ...of, ...layer, by, reach, room, way } };
}

/** The number that decides. */
function placeOf({ written, popUp }: CutPopUp, { layer }: OnStrip, way: Facts['way']): Place {
  if (!layer) return written.cut.depths[0].at;
  if (layer.body.kind === 'form') return layer.id.at;
  const { width, height } = layer.body.cut;
  const isWide = popUp.isUpright === (way === 'away');
  return layer.placement.turn ? layer.id.at : (isWide ? width : height).at;
}
