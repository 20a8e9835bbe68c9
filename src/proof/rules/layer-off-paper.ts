import type { Length, Unit } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { areaOf, type Point2 } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { type Ground, groundOf, partingOf, partOver } from '../../shape/ground.ts';
import type { Hole } from '../../shape/net.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayLength, saySize } from '../words.ts';

type Facts = OfLayer & { readonly gap: Gap };

/** Where a base has no paper, and how much of that the layer covers: a part that was trimmed off, or a hole. */
type Gap =
  | { readonly kind: 'trimmed'; readonly width: Length; readonly height: Length }
  | { readonly kind: 'hole'; readonly diameter: Length; readonly isWhole: boolean };

export const layerOffPaper: Rule<Facts> = {
  severity: 'error',
  summary: 'There is paper under every layer: none lies where its base is trimmed off or punched out.',
  why: 'A layer that reaches over a part that was trimmed off hangs in the air with its glue showing. One that covers half a hole is cut into when the string goes through; one that covers a hole whole has to be punched with it.',
  fails: {
    pieces:
      'tag: { stock: cream, form: tag, size: 2 x 4 }\nnote: { stock: cream, cut: 1 3/4 x 3, on: tag, at: { top: 3/8 } }',
    blames: 'tag',
  },
  passes: { with: 'top: 5/8', insteadOf: 'top: 3/8' },
  check: (context) =>
    eachOnBase(context, (layer) => {
      const { net, panel } = layer.under;
      if (panel ? !net.holes : layer.piece.overhang) return undefined;
      const gap = gapUnder(groundOf(layer, context.shapes), context.project.unit);
      return gap && { gap };
    }),
  say: ({ layer, baseName, gap, unit }) => {
    if (gap.kind === 'trimmed') {
      return {
        message: `${layer} lies where ${baseName} is trimmed off, over ${saySize(gap, unit)} of nothing`,
        remedy: 'move it onto the paper, or cut it smaller',
      };
    }
    const hole = `the ${sayLength(gap.diameter, unit)} hole of ${baseName}`;
    return gap.isWhole
      ? { message: `${layer} covers ${hole}`, remedy: 'punch the hole through both', severity: 'note' }
      : {
          message: `${layer} covers a part of ${hole}`,
          remedy: 'move it clear of the hole',
          severity: 'warning',
        };
  },
};

/** What of its base is missing under a layer. Where it lies across a fold, that is what is wrong. */
function gapUnder(ground: Ground, unit: Unit): Gap | undefined {
  const { net, panel, outline } = ground;
  if (!panel && partingOf(ground)) return undefined;
  const trimmed = panel ? [] : net.waste.flatMap((part) => partOver(outline, part.map(upright)) ?? []);
  const [most] = trimmed.toSorted((a, b) => b.area - a.area);
  if (most) {
    const ruler = rulerUnit(unit);
    return {
      kind: 'trimmed',
      width: roundFolded(most.width, ruler),
      height: roundFolded(most.height, ruler),
    };
  }
  for (const hole of net.holes ?? []) {
    const round = roundOf(hole);
    const covered = partOver(outline, round);
    if (covered)
      return { kind: 'hole', diameter: hole.diameter, isWhole: covered.area > 0.999 * areaOf(round) };
  }
  return undefined;
}

/** A hole as a polygon of many sides. */
function roundOf({ centre, diameter }: Hole): Point2[] {
  const { x, y } = upright(centre);
  return Array.from({ length: 48 }, (_, index) => {
    const angle = (index * Math.PI) / 24;
    return { x: x + (diameter.mm / 2) * Math.cos(angle), y: y + (diameter.mm / 2) * Math.sin(angle) };
  });
}
