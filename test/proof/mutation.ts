import type { Length } from '../../src/measure/length.ts';
import type { FlatPoint, Net, Panel } from '../../src/shape/net.ts';

/** One score line of a net: its distance from the left or top edge of the sheet. */
export type ScoreLine = { readonly lines: 'upright' | 'across'; readonly position: Length };

/** Every line that something folds along; a line two folds share is one. */
export function scoreLinesOf(net: Net): ScoreLine[] {
  const found = new Map<string, ScoreLine>();
  for (const { from, to } of net.folds) {
    const upright = from.x.equals(to.x);
    if (!upright && !from.y.equals(to.y)) continue;
    const line: ScoreLine = upright
      ? { lines: 'upright', position: from.x }
      : { lines: 'across', position: from.y };
    found.set(`${line.lines} ${line.position}`, line);
  }
  return [...found.values()].sort((a, b) => b.lines.localeCompare(a.lines) || a.position.compare(b.position));
}

/** The net with one score line made at another place, and cut there too wherever it is cut. */
export function withLineMoved(net: Net, { lines, position }: ScoreLine, by: Length): Net {
  const moved = (here: Length): Length => (here.equals(position) ? here.plus(by) : here);
  const point = ({ x, y }: FlatPoint): FlatPoint =>
    lines === 'upright' ? { x: moved(x), y } : { x, y: moved(y) };
  const panel = (each: Panel): Panel => {
    const { left, top, right, bottom } = each.box;
    const box =
      lines === 'upright'
        ? { left: moved(left), right: moved(right), top, bottom }
        : { left, right, top: moved(top), bottom: moved(bottom) };
    return { ...each, outline: each.outline.map(point), box };
  };
  const { strips, ...flat } = net;
  return {
    ...flat,
    panels: net.panels.map(panel),
    folds: net.folds.map((fold) => ({ ...fold, from: point(fold.from), to: point(fold.to) })),
    slits: net.slits.map(({ from, to }) => ({ from: point(from), to: point(to) })),
    waste: net.waste.map((part) => part.map(point)),
  };
}
