import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Edge } from '../../project/net-as-written.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { type CutPopUp, onStrip, popUpsOf } from '../pop-ups.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = CutPopUp['of'] & {
  readonly layer: string;
  /** The part of the strip that it is on, and the panel that this hangs on. */
  readonly part: string;
  readonly panel: string;
  readonly by: Length;
  /** The edge at which the part hangs on that panel, as the face with the layer is seen. */
  readonly edge: Edge;
};

/** What an edge is on the other face, turned over like the page of a book. */
const TURNED: Readonly<Record<Edge, Edge>> = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' };

export const popupHitsCard: Rule<Facts> = {
  severity: 'error',
  summary: 'What is stuck on a pop-up ends where the strip joins the card.',
  why: 'A figure may stand up past the fold in the middle of the strip, where there is only air. Past the fold that joins the strip to the card is the card itself: the figure runs into it when the card is opened.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { pop-up: 2, depth: 1 } } }\nboat: { stock: cream, cut: 2 x 1, on: inside card.step-front, at: { right: 1/4 }, overhang: yes }',
    blames: 'inside card.step-front',
  },
  passes: { with: 'left: 1/4', insteadOf: 'right: 1/4' },
  *check(context) {
    for (const cut of popUpsOf(context)) {
      const { of, popUp, caliper } = cut;
      for (const { layer, part, past, hinge } of onStrip(cut, context.shapes)) {
        const by = roundFolded(past, rulerUnit(of.unit));
        if (!layer || !by.greaterThan(tolerance(caliper))) continue;
        const panel = popUp.panels[popUp.parts.indexOf(part)] ?? '';
        const edge = layer.on?.value.face === 'outside' ? hinge : TURNED[hinge];
        const facts = { ...of, layer: layer.id.value, part, panel, by, edge };
        yield { at: layer.on?.at ?? layer.id.at, facts };
      }
    }
  },
  say: ({ piece, layer, part, panel, by, edge, unit }) => ({
    message: `${layer} reaches ${sayLength(by, unit)} past the fold between ${piece}.${part} and ${panel}: it runs into ${panel} when the card is opened`,
    remedy: `move it ${sayLength(by, unit)} away from ${panel}, with "at: { ${edge}: 0 }" or more`,
  }),
};
