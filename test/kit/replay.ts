import type { Blank, CutTree, Rect } from '../../src/kit/guillotine/blank.ts';

/** A blank where it was cut out, its corners in steps from the sheet's top left corner. */
export type Placed = {
  readonly blank: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/**
 * Cuts a sheet as a tree says, with a ruler in the hand: every cut must lie strictly inside the part it is made in,
 * and every part that is said to be a blank must have exactly that blank's size.
 * @throws when it cannot be done.
 */
export function replay(tree: CutTree, blanks: readonly Blank[], sheet: Rect): readonly Placed[] {
  const placed: Placed[] = [];
  const cut = (part: CutTree, left: number, top: number, right: number, bottom: number): void => {
    if (part.kind === 'waste') return;
    if (part.kind === 'blank') {
      const blank = blanks[part.blank];
      if (!blank) throw new Error(`there is no blank ${part.blank}`);
      const [width, height] = part.turned ? [blank.height, blank.width] : [blank.width, blank.height];
      if (part.turned && !blank.turnable) throw new Error(`blank ${part.blank} may not be turned`);
      if (right - left !== width || bottom - top !== height)
        throw new Error(`blank ${part.blank} lies in a part of ${right - left} × ${bottom - top}`);
      placed.push({ blank: part.blank, left, top, right, bottom });
      return;
    }
    const [room, at] = [part.from === 'left' ? right - left : bottom - top, part.at];
    if (!Number.isInteger(at) || at <= 0 || at >= room) throw new Error(`a cut at ${at} of ${room}`);
    if (part.from === 'left') {
      cut(part.near, left, top, left + at, bottom);
      cut(part.far, left + at, top, right, bottom);
    } else {
      cut(part.near, left, top, right, top + at);
      cut(part.far, left, top + at, right, bottom);
    }
  };
  cut(tree, 0, 0, sheet.width, sheet.height);
  return placed;
}
