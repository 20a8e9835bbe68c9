import { Length, type Unit } from '../../measure/length.ts';
import type { Edge, Project } from '../../project/model.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type Axis, axesOf, sizePlace } from '../axis.ts';
import { sheetWith } from '../example.ts';
import type { Found, ProofContext, Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength } from '../words.ts';

declare module '../../project/finding.ts' {
  interface Facts {
    readonly 'uneven-reveal': UnevenReveal & {
      readonly layer: string;
      readonly baseName: string;
      readonly unit: Unit;
    };
  }
}

export const unevenReveal: Rule<'uneven-reveal'> = {
  id: 'uneven-reveal',
  severity: 'warning',
  summary: 'The border round a centred layer is the same on all sides, unless it plainly means to differ.',
  why: 'A border of 1/8 in at the sides and 3/16 in above and below is rarely meant: more often one number was subtracted wrongly. The eye sees the difference at once. Borders that differ by more than 1/8 in, or are wider than 1/2 in, are taken as meant. A layer placed by distances that is almost centred, but not quite, gets a note.',
  fails: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/8, on: card }',
    }),
    blames: '5 1/8',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/4, on: card }',
    }),
  },
  *check({ project, shapes }: ProofContext) {
    for (const layer of shapes.layers) {
      const uneven = differing(layer, project);
      if (uneven) yield uneven;
      for (const axis of axesOf(layer)) yield* offCentre(axis, project);
    }
  },
  say: (facts) => (facts.kind === 'sides and ends' ? sayDiffering(facts) : sayOffCentre(facts)),
};

/** What is uneven: the border at the sides against that above and below, or that on two facing sides. */
type UnevenReveal =
  | {
      readonly kind: 'sides and ends';
      readonly sides: Length;
      readonly ends: Length;
      /** What to cut the layer at, in the direction it is too small, to have the narrower border all round. */
      readonly cut: Length;
      readonly layerIs: Axis['layerIs'];
    }
  | {
      readonly kind: 'facing sides';
      readonly sides: Axis['sides'];
      readonly reveals: Axis['reveals'];
      /** The side the layer is placed from. */
      readonly from: Edge;
    };

type FactsOf<K extends UnevenReveal['kind']> = Extract<Found<'uneven-reveal'>['facts'], { readonly kind: K }>;

/** A centred layer whose border at the sides is a little different from that above and below. */
function differing(layer: Layer, { unit }: Project): Found<'uneven-reveal'> | undefined {
  const [across, upright] = axesOf(layer);
  if (!across?.centred || !upright?.centred) return undefined;
  const [sides, ends] = [across.reveals[0], upright.reveals[0]];
  const { widest, slip } = tolerances(unit);
  const border = sides.sign > 0 && ends.sign > 0 && !Length.max(sides, ends).greaterThan(widest);
  if (!border || sides.equals(ends) || sides.minus(ends).abs().greaterThan(slip)) return undefined;
  const wider = sides.greaterThan(ends) ? across : upright;
  const cut = wider.base.minus(Length.min(sides, ends).times(2));
  const { layerIs } = wider;
  const facts = { kind: 'sides and ends', sides, ends, cut, layerIs, ...namesOf(layer), unit } as const;
  return { at: sizePlace(wider), facts };
}

/** A layer placed by a distance that all but centres it. */
function* offCentre({ layer, reveals, sides }: Axis, { unit }: Project): Iterable<Found<'uneven-reveal'>> {
  const apart = reveals[0].minus(reveals[1]).abs();
  const from = sides.find((side) => layer.piece.placement[side]);
  const given = from && layer.piece.placement[from];
  if (!given || apart.sign === 0 || !apart.lessThan(tolerances(unit).slip)) return;
  yield { at: given.at, facts: { kind: 'facing sides', sides, reveals, from, ...namesOf(layer), unit } };
}

function namesOf({ piece, baseName }: Layer): { layer: string; baseName: string } {
  return { layer: piece.id.value, baseName };
}

function sayDiffering({
  layer,
  baseName,
  sides,
  ends,
  cut,
  layerIs,
  unit,
}: FactsOf<'sides and ends'>): Words {
  const say = (length: Length): string => sayLength(length, unit);
  return {
    message: `${layer} leaves ${say(sides)} of ${baseName} to show at the sides, but ${say(ends)} above and below`,
    remedy: `cut it ${say(cut)} ${layerIs} for ${say(Length.min(sides, ends))} all round`,
  };
}

function sayOffCentre({ layer, baseName, sides, reveals, from, unit }: FactsOf<'facing sides'>): Words {
  const [first, second] = reveals.map((reveal) => sayLength(reveal, unit));
  return {
    severity: 'note',
    message: `${layer} lies ${first} from the ${sides[0]} of ${baseName} and ${second} from the ${sides[1]}: almost centred, but not quite`,
    remedy: `leave out "${from}" to centre it, or let it stand if it is meant so`,
  };
}

/** Our judgement, no source: the widest border that is looked at as one, and the largest difference that is a slip. */
function tolerances(unit: Unit): { widest: Length; slip: Length } {
  return unit === 'in'
    ? { widest: Length.of(1, 2, 'in'), slip: Length.of(1, 8, 'in') }
    : { widest: Length.of(12, 1, 'mm'), slip: Length.of(3, 1, 'mm') };
}
