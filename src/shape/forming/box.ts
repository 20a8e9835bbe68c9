import { Length } from '../../measure/length.ts';
import type { At, Place } from '../../project/source.ts';
import { leastNesting, nestingAllowance, type TabsInside, wallAllowance } from './allowance.ts';
import { optional, optionalLength, type Parameters, type Sizing } from './form.ts';
import { customary } from './ruler.ts';
import type { Settings } from './settings.ts';

type BoxSide = 'width' | 'depth' | 'height';

/** Lengths from score line to score line, and where each was written. */
export type Measured<S extends BoxSide> = Readonly<Record<S, Length>> & {
  readonly at: Readonly<Record<S, Place>>;
};

/**
 * The size of a box, measured between score lines. Along the height `walls` walls count: one for an open tray, two for
 * what is closed above and below.
 */
export function sizeOfBox(walls: 1 | 2): Sizing<Measured<BoxSide>> {
  return {
    parameters: {
      inside: optional('volume', 'width x depth x height of the room inside; the paper is allowed for'),
      outside: optional('volume', 'width x depth x height of the finished box, instead of inside'),
    },
    alternatives: true,
    read: (settings) => {
      const inside = settings.has('inside');
      const [width, depth, height] = settings.lengths(inside ? 'inside' : 'outside');
      if (!width || !depth || !height) return undefined;
      const scored = (side: BoxSide, { value, at }: At<Length>, count: 1 | 2): Length => {
        const allowance = wallAllowance(settings.ruler, settings.caliper, count);
        const length = inside ? value.plus(allowance) : value.minus(allowance);
        settings.limit(length, at, `the ${side}`, settings.foldable);
        return length;
      };
      const box = {
        width: scored('width', width, 2),
        depth: scored('depth', depth, 2),
        height: scored('height', height, walls),
        at: { width: width.at, depth: depth.at, height: height.at },
      };
      return settings.findings.length > 0 ? undefined : box;
    },
  };
}

/** The size of something flat, `says` which, each side of it wide enough to fold. */
export function sizeOfCard(says: string): Sizing<Measured<'width' | 'height'>> {
  return {
    parameters: { size: { kind: 'size', required: true, says } },
    read: (settings) => {
      const [width, height] = settings.lengths('size');
      if (!width || !height) return undefined;
      settings.limit(width.value, width.at, 'the width', settings.foldable);
      settings.limit(height.value, height.at, 'the height', settings.foldable);
      return { width: width.value, height: height.value, at: { width: width.at, height: height.at } };
    },
  };
}

export const TAB: Parameters[string] = optionalLength(
  'width of the glue tab; 1/2 in (13 mm), or less where that would be wider than what it is glued to, by default',
);

/** The usual glue tab, narrower where what it is glued to is. Common practice, no source. */
export function usualTab(settings: Settings, mate: Length): Length {
  return Length.min(customary(settings.ruler, 1, 2), mate);
}

/** The glue tab, on something as wide as `mate` that lies `where`. */
export function readTab(settings: Settings, mate: Length, where: string): Length {
  const why = `it is glued ${where}, which is only that wide`;
  return settings.length('tab', usualTab(settings, mate), [{ most: mate, why }]);
}

/** How much larger one part is than the other that goes into it. */
export function readClearance(settings: Settings, tabs: TabsInside): Length {
  const { ruler, caliper } = settings;
  const thicknesses = tabs === 1 ? 'three thicknesses of paper' : 'four thicknesses of paper';
  const limit = { least: leastNesting(caliper, tabs), why: `${thicknesses} go into it, the tabs counted` };
  return settings.length('clearance', nestingAllowance(ruler, caliper, tabs), [limit]);
}
