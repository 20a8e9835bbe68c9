import { along, type CutTree, leavesOf, shapeOf } from './cut-tree.ts';

/** What a setting is worth in cuts: equal strips are cut in stacks. Common practice, no source. */
const CUTS_A_SETTING = 8;

/**
 * How much work a tree is, in settings of the trimmer. Among ways that are as easy, the one with the waste in fewer
 * parts, which are larger, counts a little less.
 */
export function effortOf(tree: CutTree): number {
  const lost = leavesOf(tree).filter(({ kind }) => kind === 'waste').length;
  return countSettings(tree) + countCuts(tree) / CUTS_A_SETTING + lost / 100;
}

/** How many times the trimmer is set for all that is cut, equal parts cut together. */
function countSettings(tree: CutTree): number {
  const settings = new Set<string>();
  const visit = (part: CutTree): void => {
    if (part.kind !== 'strips') return;
    const shape = shapeOf(part);
    for (const strip of part.parts.slice(0, -1)) settings.add(`${shape} at ${along(strip, part.from)}`);
    for (const strip of part.parts) visit(strip);
  };
  visit(tree);
  return settings.size;
}

/** How many cuts a tree takes, each part by itself. */
function countCuts(tree: CutTree): number {
  if (tree.kind !== 'strips') return 0;
  return tree.parts.reduce((cuts, part) => cuts + countCuts(part), tree.parts.length - 1);
}

/** What a way to cut sheets costs the person at the trimmer, in settings of the stop: once, and for each sheet. */
export type Effort = { readonly once: number; readonly perSheet: number };

/** To find one's way in another layout; common practice, no source. */
const LAYOUT = 4;

export function effortOfSheets(tree: CutTree): Effort {
  return { once: LAYOUT + countSettings(tree), perSheet: countCuts(tree) / CUTS_A_SETTING };
}
