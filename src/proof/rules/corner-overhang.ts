import { Length } from '../../measure/length.ts';
import { nextMark, roundMillimeters } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import {
  areAll,
  CORNERS,
  type Corner,
  type RoundedCorners,
  type Rounding,
  roundingAt,
} from '../../project/corners.ts';
import type { Project } from '../../project/model.ts';
import { faceOf } from '../../project/ref.ts';
import type { At } from '../../project/source.ts';
import { fillsItsBox, groundOf, reachOverNotch, reachPast } from '../../shape/ground.ts';
import type { Layer, Shapes } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayCorners, sayLength } from '../words.ts';

type Facts = OfLayer & {
  /** The radius of the layer's own corners, if they are rounded. */
  readonly own?: Length;
  readonly base: RoundBase | CutBase;
};

/** A flat piece by its rounded corners, and the radius at which the layer follows them. */
type RoundBase = Rounding & { readonly following: Length };

/**
 * Any other base by its outline, which the layer passes so far at a corner, or with an outline of its own, or over the gap
 * of a pop-up.
 */
type CutBase = { readonly by: Length; readonly isOutlined: boolean; readonly popUp?: string };

export const cornerOverhang: Rule<Facts> = {
  severity: 'error',
  summary:
    'The corners of a layer stay within those of its base, whether these are rounded, clipped or tapered.',
  why: 'A square layer that fits its base by width and height can still stick out at its corners: past the rounded corners of a card, the clipped ones of a tag, the slanted sides of a tapered flap. Round the layer too, clip it the same way, or cut it smaller.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5, corners: 1/2 }\nfront: { stock: cream, cut: 3 7/8 x 4 7/8, on: card }',
    blames: 'front',
  },
  passes: { with: 'on: card, corners: 7/16', insteadOf: 'on: card' },
  *check({ project, shapes }) {
    for (const layer of shapes.layers) {
      const passed = passedBase(layer, project, shapes);
      if (!passed) continue;
      const { base, own } = passed;
      const facts = { ...ofLayer(project, layer), ...(own && { own: own.value }), base };
      yield { at: own?.at ?? layer.piece.id.at, facts };
    }
  },
  say: ({ layer, baseName, own, base, unit }) => {
    if ('by' in base && base.popUp !== undefined) {
      return {
        message: `${layer} lies ${sayLength(base.by, unit)} deep over the gap that ${base.popUp} leaves in ${baseName}; glued there, it would hold the strip back`,
        remedy: `move it ${sayLength(base.by, unit)} further from the fold, or cut it that much smaller there; or write "overhang: yes" and put no glue over the strip`,
      };
    }
    const corners = own ? `corners of ${sayLength(own, unit)}` : 'square corners';
    if ('by' in base && base.isOutlined) {
      return {
        message: `${layer} fits ${baseName} by its width and height, but passes its outline by ${sayLength(base.by, unit)}`,
        remedy: `move it ${sayLength(base.by, unit)} further in, or cut it that much smaller on each side; or write "overhang: yes" if you meant it`,
      };
    }
    if ('by' in base) {
      return {
        message: `${layer} fits ${baseName}, but its ${corners} pass the cut ones of the base by ${sayLength(base.by, unit)}`,
        remedy: `cut it ${sayLength(base.by, unit)} smaller on each side, or cut its corners like those of the base`,
      };
    }
    const rounded = sayLength(base.radius.value, unit);
    const those = areAll(base.corners) ? 'rounded ones' : `rounded ${sayCorners(base.corners)}`;
    const there = areAll(base.corners) ? '' : ' there';
    return {
      message: `${layer} fits ${baseName}, but its ${corners} show beyond the ${those} of the base (${rounded})`,
      remedy: `round its corners${there} at ${sayLength(base.following, unit)}, or cut it smaller`,
      notes: [{ message: `${baseName} has ${sayCorners(base.corners)} of ${rounded}`, at: base.radius.at }],
    };
  },
};

/** Millimeters: straight stretches stand for arcs in outlines, and miss them by less. */
const ARC_MISS = 0.1;

/** What is passed, and the radius of the layer's corner that does. */
type Passed = { readonly base: Facts['base']; readonly own?: At<Length> | undefined };

/** The base whose corners a layer passes though it fits by width and height; undefined where it passes none. */
function passedBase(layer: Layer, { pieces, unit }: Project, shapes: Shapes): Passed | undefined {
  const { piece, reveals, turn } = layer;
  const reference = piece.on?.value;
  const { left, right, top, bottom } = reveals;
  const least = Length.min(left, right, top, bottom);
  if (piece.overhang || !reference || least.sign < 0) return undefined;
  const base = pieces.get(reference.piece);
  const isOutlined = [piece, base].some((each) => each?.body.kind === 'flat' && each.body.outline);
  const isRounded = base?.body.kind === 'flat' && turn % 90 === 0 && !isOutlined;
  if (isRounded && base.corners) {
    const passed = passedCorner(layer, base.corners);
    if (!passed) return undefined;
    return { ...passed, base: { ...passed.base, following: passed.base.radius.value.minus(least) } };
  }
  const { panel } = layer.under;
  const isUncut = turn % 90 === 0 && panel !== undefined && fillsItsBox(panel);
  const ground = groundOf(layer, shapes);
  const by = isUncut ? 0 : reachPast(ground);
  const mark = nextMark(roundMillimeters(by, 1000), rulerUnit(unit), 'finest');
  const own = piece.corners?.[0]?.radius;
  if (by <= ARC_MISS) return undefined;
  const popUp = reachOverNotch(ground) < by ? undefined : popUpIn(layer);
  return { own, base: { by: mark, isOutlined, ...(popUp !== undefined && { popUp }) } };
}

/** The name of a pop-up that leaves a gap in the panel a layer lies on. */
function popUpIn({ under: { net, panel } }: Layer): string | undefined {
  return net.popUps?.find(({ panels }) => panel && panels.includes(panel.id))?.name;
}

/** The rounded corner of the base that a layer passes, and how the layer's own is rounded there. */
function passedCorner(
  layer: Layer,
  rounded: RoundedCorners,
): { readonly base: Rounding; readonly own?: At<Length> | undefined } | undefined {
  for (const spot of CORNERS) {
    const base = roundingAt(rounded, faceOf(layer.on) === 'inside' ? mirrored(spot) : spot);
    const own = roundingAt(layer.piece.corners, ownCorner(layer, spot))?.radius;
    if (base && passesArc(layer, spot, base.radius.value.minus(own?.value ?? Length.zero)))
      return { base, own };
  }
  return undefined;
}

/** The corner of a layer that comes to lie at one of its base. */
function ownCorner({ turn, on }: Layer, spot: Corner): Corner {
  const back = CORNERS.at((CORNERS.indexOf(spot) - turn / 90) % CORNERS.length) ?? spot;
  return on.face === 'behind' ? mirrored(back) : back;
}

function mirrored(corner: Corner): Corner {
  // Clockwise from the top left, what is mirrored stands the other way round from the top right.
  return CORNERS.at(1 - CORNERS.indexOf(corner)) ?? corner;
}

/**
 * Whether a corner of the layer lies outside the arc that rounds the base's there. An arc of the layer lies inside when the
 * distance of the two centers is at most the difference of the two radii, the slack. Exact, by whole numbers.
 */
function passesArc({ reveals }: Layer, spot: Corner, slack: Length): boolean {
  if (slack.sign <= 0) return false;
  const [upright, across] = [
    spot.startsWith('top') ? reveals.top : reveals.bottom,
    spot.endsWith('left') ? reveals.left : reveals.right,
  ];
  const [x, y] = [slack.minus(across), slack.minus(upright)];
  if (x.sign <= 0 || y.sign <= 0) return false;
  const [a, b] = [x.over(slack), y.over(slack)];
  const bottom = a.denominator * b.denominator;
  return (a.numerator * b.denominator) ** 2n + (b.numerator * a.denominator) ** 2n > bottom ** 2n;
}
