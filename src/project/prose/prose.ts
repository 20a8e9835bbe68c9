import type { Project, Prose } from '../model.ts';

/** The introduction and every step, in the order they are read. */
export function everyProse({
  introduction,
  steps,
}: Pick<Project, 'introduction' | 'steps'>): readonly Prose[] {
  return [introduction, ...steps.map(({ prose }) => prose)];
}
