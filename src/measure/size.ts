import type { Length } from './length.ts';

/** Width across, height up and down, as the piece is drawn. */
export type Size = { readonly width: Length; readonly height: Length };

/** Width × height × depth of something solid. */
export type Volume = Size & { readonly depth: Length };

export function sameSize(a: Size, b: Size): boolean {
  return a.width.equals(b.width) && a.height.equals(b.height);
}

/** The size after a quarter turn. */
export function quarterTurned(size: Size): Size {
  return { width: size.height, height: size.width };
}

/** Whether `inner` lies within `outer` as it is, without turning. */
export function fitsWithin(inner: Size, outer: Size): boolean {
  return !inner.width.greaterThan(outer.width) && !inner.height.greaterThan(outer.height);
}
