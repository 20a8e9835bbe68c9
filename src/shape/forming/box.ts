import { Length } from '../../measure/length.ts';
import type { FormParameter } from '../../project/model.ts';
import type { At } from '../../project/source.ts';
import { wallAllowance } from './allowance.ts';
import { customary } from './ruler.ts';
import type { Settings } from './settings.ts';

/** A box from score line to score line, each number with the place it was written at. */
export type BoxMeasures = {
  readonly width: At<Length>;
  readonly depth: At<Length>;
  readonly height: At<Length>;
};

/** The keys that say how large a box is, of which one is given. */
export const BOX_SIZES: readonly string[] = ['inside', 'outside'];

export const BOX_PARAMETERS: readonly FormParameter[] = [
  {
    key: 'inside',
    kind: 'volume',
    required: false,
    says: 'width x depth x height of the room inside; the paper is allowed for',
  },
  {
    key: 'outside',
    kind: 'volume',
    required: false,
    says: 'width x depth x height of the finished box, instead of inside',
  },
];

export const TAB_PARAMETER: FormParameter = {
  key: 'tab',
  kind: 'length',
  required: false,
  says: 'width of the glue tab; 1/2 in (13 mm), or less where that would be wider than what it is glued to, when not given',
};

/** The usual glue tab, narrower where what it is glued to is. Common practice, no source. */
export function usualTab(settings: Settings, mate: Length): Length {
  return Length.min(customary(settings.ruler, 1, 2), mate);
}

/**
 * The box its settings describe, measured between score lines; undefined, with a finding, when they describe none.
 * Along the height `walls` walls count: one for an open tray, two for what is closed above and below.
 */
export function readBox(settings: Settings, walls: 1 | 2): BoxMeasures | undefined {
  const inside = settings.has('inside');
  const [width, depth, height] = settings.lengths(inside ? 'inside' : 'outside');
  if (!width || !depth || !height) return undefined;
  const scored = ({ value, at }: At<Length>, count: 1 | 2): At<Length> => {
    const allowance = wallAllowance(settings.ruler, settings.caliper, count);
    return { value: inside ? value.plus(allowance) : value.minus(allowance), at };
  };
  const box = { width: scored(width, 2), depth: scored(depth, 2), height: scored(height, walls) };
  refuseNarrow(settings, box.width, 'the width');
  refuseNarrow(settings, box.depth, 'the depth');
  refuseNarrow(settings, box.height, 'the height');
  return settings.findings.length > 0 ? undefined : box;
}

/** Refuses a panel that no bone folder gets between two score lines. Common practice, no source. */
export function refuseNarrow(settings: Settings, width: At<Length>, what: string): void {
  const least = customary(settings.ruler, 1, 8);
  settings.refuseUnder(width, least, what, 'score lines so close together do not fold cleanly');
}

/** The bare lengths. */
export function sizesOf({ width, depth, height }: BoxMeasures): {
  readonly width: Length;
  readonly depth: Length;
  readonly height: Length;
} {
  return { width: width.value, depth: depth.value, height: height.value };
}

/** Refuses what is folded down its middle where half of it is too narrow. */
export function refuseNarrowHalf(settings: Settings, whole: At<Length>, what: string): void {
  const least = customary(settings.ruler, 1, 4);
  settings.refuseUnder(whole, least, what, 'half of it would be too narrow to fold cleanly');
}
