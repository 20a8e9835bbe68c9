import { along, type CutTree, shapeOf } from './cut-tree.ts';

/** What a way to cut sheets costs the person at the trimmer, in settings of the stop: once, and for each sheet. */
export type Effort = { readonly once: number; readonly perSheet: number };

/** What a setting is worth in cuts: equal strips are cut in stacks. Common practice, no source. */
const CUTS_A_SETTING = 8;

/** To find one's way in another layout; common practice, no source. */
const LAYOUT = 4;

/** The trimmer is set once for all that is cut alike. */
export function effortOf(tree: CutTree): Effort {
  const settings = new Set<string>();
  let cuts = 0;
  const visit = (part: CutTree): void => {
    if (part.kind !== 'strips') return;
    const shape = shapeOf(part);
    for (const strip of part.parts.slice(0, -1)) settings.add(`${shape} at ${along(strip, part.from)}`);
    cuts += part.parts.length - 1;
    part.parts.forEach(visit);
  };
  visit(tree);
  return { once: LAYOUT + settings.size, perSheet: cuts / CUTS_A_SETTING };
}
