import type { Length, Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { type Face, faceOf, writeName } from '../../project/ref.ts';
import { commonParts, convexParts, extentOf, type Overlap, without } from '../../shape/common-parts.ts';
import { areaOf, type Point2 } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { groundOf, openingsIn, partingOf, partOver } from '../../shape/ground.ts';
import type { Opening } from '../../shape/net.ts';
import { gapOf } from '../../shape/openings/gap.ts';
import type { Layer, Shapes } from '../../shape/shapes.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { ProofContext, Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, saySize } from '../words.ts';

type Facts = OfLayer & { readonly gap: Gap };

/** Where a base has no paper, and how much of that the layer covers: a part that was trimmed off, a hole, an opening. */
type Gap =
  | { readonly kind: 'trimmed'; readonly width: Length; readonly height: Length }
  | { readonly kind: 'hole'; readonly diameter: Length; readonly isWhole: boolean }
  | Covering;

/** An opening, how much of it is covered, and which side of the paper the layer is on. */
type Covering = {
  readonly kind: 'opening';
  readonly opening: string;
  readonly width: Length;
  readonly height: Length;
  readonly isWhole: boolean;
  readonly face: Face;
  readonly isSlit: boolean;
};

export const layerOffPaper: Rule<Facts> = {
  severity: 'error',
  summary: 'There is paper under every layer: none is where its base is trimmed off, punched or cut out.',
  why: 'A layer that reaches over a part that was trimmed off hangs in the air with its glue showing. One that covers half a hole is in the way of the string; one that covers a whole hole has to be punched with it. One that covers a window hides it; what is to show through it goes `behind:` it.',
  fails: {
    pieces:
      'tag: { stock: cream, form: tag, size: 2 x 4 }\nnote: { stock: cream, cut: 1 3/4 x 3, on: tag, at: { top: 3/8 } }',
    blames: 'tag',
  },
  passes: { with: 'top: 5/8', insteadOf: 'top: 3/8' },
  check: (context) =>
    eachOnBase(context, (layer) => {
      const { net, panel } = layer.under;
      if (panel ? !net.openings : layer.piece.overhang) return undefined;
      const gap = gapUnder(layer, context);
      return gap && { gap };
    }),
  say: ({ layer, baseName, gap, unit }) => {
    if (gap.kind === 'trimmed') {
      return {
        message: `${layer} lies where ${baseName} is trimmed off, over ${saySize(gap, unit, printNear)} of nothing`,
        remedy: 'move it onto the paper, or cut it smaller',
      };
    }
    if (gap.kind === 'opening') return sayCovering(layer, gap, unit);
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
function gapUnder(layer: Layer, { project: { unit }, shapes }: ProofContext): Gap | undefined {
  const ground = groundOf(layer, shapes);
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
  const bare = openingsIn(layer, shapes);
  for (const opening of net.openings ?? []) {
    const covered = isFilled(opening, layer, shapes) ? undefined : coveredPart(opening, outline, bare);
    if (covered) return gapOver(opening, covered, layer, unit);
  }
  return undefined;
}

/** Whether an opening is what a layer is stuck to by name; or filled, so that one on the inside only hides the back of that. */
function isFilled(opening: Opening, { on, under: own }: Layer, { layers }: Shapes): boolean {
  const hasView = layers.some(({ under }) => under.opening === opening);
  return own.opening === opening || (faceOf(on) === 'inside' && hasView);
}

/** What a layer covers of an opening, itself cut out where it has openings of its own; undefined of next to nothing. */
function coveredPart(
  opening: Opening,
  outline: readonly Point2[],
  bare: readonly (readonly Point2[])[],
): Overlap | undefined {
  const over = commonParts(outline, gapOf(opening));
  const covered = extentOf(
    without(
      over,
      bare.flatMap((each) => convexParts(each)),
    ),
  );
  return Math.min(covered.width, covered.height) > TOUCHING ? covered : undefined;
}

/** Millimeters; what lies over something by no more only touches it. */
const TOUCHING = 0.5;

function gapOver(opening: Opening, covered: Overlap, { on }: Layer, unit: Unit): Gap {
  const { name, how, size } = opening;
  const isWhole = covered.area > 0.999 * areaOf(gapOf(opening));
  if (how === 'punched') return { kind: 'hole', diameter: size.width, isWhole };
  const ruler = rulerUnit(unit);
  return {
    kind: 'opening',
    opening: writeName({ piece: on.piece, part: name }),
    width: roundFolded(covered.width, ruler),
    height: roundFolded(covered.height, ruler),
    isWhole,
    face: faceOf(on),
    isSlit: how === 'slit',
  };
}

function sayCovering(
  layer: string,
  { opening, isWhole, face, isSlit, ...size }: Covering,
  unit: Unit,
): Words {
  if (isSlit)
    return {
      message: `${layer} covers the slot ${opening}: nothing goes through it any more`,
      remedy: `move it clear of ${opening}, or cut the same slot in it`,
    };
  const message = isWhole
    ? `${layer} covers ${opening}: nothing shows through it`
    : `${layer} covers ${saySize(size, unit, printNear)} of ${opening}, with nothing to stick to`;
  const move = `move it clear of ${opening}, or cut the same opening in it`;
  return {
    message,
    remedy: face === 'inside' ? `write "behind: ${opening}" if it is to show through` : move,
  };
}
