import { customary } from '../forming/ruler.ts';
import type { Settings } from '../forming/settings.ts';
import { arcRound, fittedInto } from '../tracing/curves.ts';
import type { Outline } from '../tracing/outline.ts';
import { refuseUnequal } from '../tracing/round.ts';

const FEWEST = 5;

export const scallopedCircle: Outline = {
  name: 'scalloped circle',
  summary: 'A circle with an edge of half circles, one of them at the top.',
  said: 'scalloped circle with {scallops} scallops',
  across: true,
  parameters: [
    {
      key: 'scallops',
      kind: 'count',
      required: false,
      says: 'Of a `scalloped circle`: how many half circles its edge has, 5 or more; 12 by default.',
    },
  ],
  trace: (size, settings, written) => {
    refuseUnequal(settings, written, 'a scalloped circle');
    const scallops = countedScallops(settings, size.width.mm);
    // The valleys lie on a circle of radius 1; a scallop stands on the line from one to the next.
    const half = Math.PI / scallops;
    const [middle, radius] = [Math.cos(half), Math.sin(half)];
    const scale = size.width.mm / (2 * (middle + radius));
    const points = Array.from({ length: scallops }, (_, index) => {
      const towards = 2 * half * index - Math.PI / 2;
      const center = { x: middle * Math.cos(towards), y: middle * Math.sin(towards) };
      return arcRound(center, radius, [towards - Math.PI / 2, towards + Math.PI / 2], scale);
    });
    return fittedInto(size, points.flat());
  },
};

/** How many scallops there are, at least 5; each is as wide as scissors can follow, by our judgment. */
function countedScallops(settings: Settings, across: number): number {
  const { value: scallops, at } = settings.count('scallops', 12);
  const least = customary(settings.ruler, 1, 8);
  const most = Math.max(FEWEST, Math.floor(Math.PI / Math.asin(least.mm / across)) - 1);
  const reason = `${settings.piece} has ${scallops} scallops`;
  if (scallops < FEWEST)
    settings.refuse(at, `${reason}, and fewer than ${FEWEST} make no circle`, 'write 5 or more');
  if (scallops > most) {
    const small = `${reason}, which are less than ${settings.say(least)} wide each: too small to cut`;
    settings.refuse(at, small, `write at most ${most}, or make it larger`);
  }
  return Math.min(Math.max(scallops, FEWEST), most);
}
