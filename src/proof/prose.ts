import type { Project, Prose } from '../project/model.ts';

/** The introduction and every step, in the order they are read. */
export function everyProse({ introduction, steps }: Project): readonly Prose[] {
  return [introduction, ...steps.map(({ prose }) => prose)];
}
