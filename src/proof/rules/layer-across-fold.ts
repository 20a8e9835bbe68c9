import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { writeRef } from '../../project/ref.ts';
import {
  fittingPanel,
  groundOf,
  liesOnWhole,
  type PanelPart,
  panelsUnder,
  partingOf,
} from '../../shape/ground.ts';
import type { Fold } from '../../shape/net.ts';
import type { Layer } from '../../shape/shapes.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfLayer & {
  /** Two panels it lies on, and how far it reaches onto each. */
  readonly panels: readonly [string, string];
  readonly reaches: readonly [Length, Length];
  /** What parts them: a score line, or a cut. */
  readonly between: 'fold' | 'cut';
  /** How many further panels it lies on. */
  readonly further: number;
  /** A panel that it would go on, and would fit there, as it is to be written. */
  readonly fitting?: string;
};

export const layerAcrossFold: Rule<Facts> = {
  severity: 'error',
  summary: 'A layer lies on one panel: not across a line that is folded, nor across a cut.',
  why: 'A layer glued across a score line holds the fold open, or cracks along it. Usually only the panel was forgotten: `on: card` is the whole sheet as it lies flat, `on: card.front` the front alone. A layer may lie across a line that is scored and left flat. One that is meant to join two panels, as a spine does, says `overhang: yes`.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/4, on: card }',
    blames: 'card',
  },
  passes: { with: 'on: card.front', insteadOf: 'on: card' },
  check: (context) => eachOnBase(context, (layer) => partedPanels(layer, context)),
  say: ({ layer, baseName, panels, reaches, between, further, fitting, unit }) => {
    const [first, second] = reaches.map((reach) => sayLength(reach, unit));
    const more = further > 0 ? `, and ${further} more` : '';
    return {
      message: `${layer} lies across the ${between} between ${panels[0]} and ${panels[1]} of ${baseName}: ${first} of it on ${panels[0]}, ${second} on ${panels[1]}${more}`,
      remedy: fitting
        ? `say which panel it goes on, such as "on: ${fitting}"`
        : 'cut it to fit on one panel, and say on which',
    };
  },
};

/** The panels under a layer on a folded sheet as a whole, if the folding takes them apart. */
function partedPanels(
  layer: Layer,
  { project: { unit }, shapes }: ProofContext,
): Omit<Facts, keyof OfLayer> | undefined {
  if (!liesOnWhole(layer, shapes)) return undefined;
  const ground = groundOf(layer, shapes);
  const parted = partingOf(ground);
  if (!parted) return undefined;
  const { parts, fold } = parted;
  const ruler = rulerUnit(unit);
  const [first, second] = parts;
  const fitting = fittingPanel(layer);
  return {
    panels: [first.panel.id, second.panel.id],
    reaches: [roundFolded(reachOver(first, fold), ruler), roundFolded(reachOver(second, fold), ruler)],
    between: fold ? 'fold' : 'cut',
    further: panelsUnder(ground).length - 2,
    ...(fitting !== undefined && { fitting: writeRef({ ...layer.on, part: fitting }) }),
  };
}

/** How far a layer reaches onto a panel from a fold; without one, the less of its two ways. In millimeters. */
function reachOver({ part: { width, height } }: PanelPart, fold: Fold | undefined): number {
  if (!fold) return Math.min(width, height);
  return fold.from.x.equals(fold.to.x) ? width : height;
}
