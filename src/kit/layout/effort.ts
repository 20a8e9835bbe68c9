import { along, leavesOf, type Part, shapeOf } from './part.ts';

/** What a setting is worth in cuts: equal strips are cut in stacks. Common practice, no source. */
export const CUTS_A_SETTING = 8;

/**
 * How much work a part is, in settings of the trimmer. Among ways that are as easy, the one with the waste in fewer
 * parts, which are larger, counts a little less.
 */
export function effortOfPart(part: Part): number {
  const waste = leavesOf(part).filter(({ kind }) => kind === 'waste').length;
  return countSettings(part) + countCuts(part) / CUTS_A_SETTING + waste / 100;
}

/** How many times the trimmer is set for a part and all that is cut from it, equal parts cut together. */
export function countSettings(part: Part): number {
  const settings = new Set<string>();
  const visit = (each: Part): void => {
    if (each.kind !== 'strips') return;
    const shape = shapeOf(each);
    for (const strip of each.parts.slice(0, -1)) settings.add(`${shape} at ${along(strip, each.from)}`);
    for (const strip of each.parts) visit(strip);
  };
  visit(part);
  return settings.size;
}

/** How many cuts a part takes, each part by itself. */
export function countCuts(part: Part): number {
  if (part.kind !== 'strips') return 0;
  return part.parts.reduce((cuts, each) => cuts + countCuts(each), part.parts.length - 1);
}
