import type { Rect } from './cut-tree.ts';

/** A kind of rectangle to be cut from a sheet, any number of times. */
export type Blank = Rect & {
  /** Whether it may be cut a quarter turned. */
  readonly turnable: boolean;
};

/** The sizes a blank can be cut in: as it is, and turned where it may be and that is another size. */
export function stancesOf({ width, height, turnable }: Blank): readonly (Rect & { turned: boolean })[] {
  const upright = { width, height, turned: false };
  return turnable && width !== height ? [upright, { width: height, height: width, turned: true }] : [upright];
}

/** The stances in which a blank can be cut from a sheet at all. */
export function stancesOn(blank: Blank, sheet: Rect): ReturnType<typeof stancesOf> {
  return stancesOf(blank).filter(({ width, height }) => width <= sheet.width && height <= sheet.height);
}
