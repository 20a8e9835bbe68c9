import type { Blank, CutTree, Rect } from '../../src/kit/solver/cut-tree.ts';

/** A blank where it was cut out, its corners in steps from the sheet's top left corner. */
export type Placed = {
  readonly blank: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/**
 * Cuts a sheet as a tree says, with a ruler in the hand: strip after strip comes off, every one must be as large as it
 * says, together they must be the whole part, and every blank must have exactly its own size.
 * @throws when it cannot be done.
 */
export function replay(tree: CutTree, blanks: readonly Blank[], sheet: Rect): readonly Placed[] {
  const placed: Placed[] = [];
  const cut = (part: CutTree, left: number, top: number, right: number, bottom: number): void => {
    if (part.width !== right - left || part.height !== bottom - top)
      throw new Error(`${part.width} × ${part.height} in a room of ${right - left} × ${bottom - top}`);
    if (part.kind === 'waste') return;
    if (part.kind === 'blank') {
      const blank = blanks[part.blank];
      if (!blank) throw new Error(`there is no blank ${part.blank}`);
      const [width, height] = part.turned ? [blank.height, blank.width] : [blank.width, blank.height];
      if (part.turned && !blank.turnable) throw new Error(`blank ${part.blank} may not be turned`);
      if (part.width !== width || part.height !== height)
        throw new Error(`blank ${part.blank} lies in a part of ${part.width} × ${part.height}`);
      placed.push({ blank: part.blank, left, top, right, bottom });
      return;
    }
    const sideways = part.from === 'left';
    if (part.parts.length < 2) throw new Error('strips that nothing is cut off');
    let [x, y] = [left, top];
    for (const strip of part.parts) {
      const length = sideways ? strip.width : strip.height;
      if (!Number.isInteger(length) || length <= 0) throw new Error(`a strip of ${length}`);
      if (sideways) cut(strip, x, top, x + length, bottom);
      else cut(strip, left, y, right, y + length);
      [x, y] = sideways ? [x + length, y] : [x, y + length];
    }
    if ((sideways ? x : y) !== (sideways ? right : bottom))
      throw new Error('strips that leave something over');
  };
  cut(tree, 0, 0, sheet.width, sheet.height);
  return placed;
}
