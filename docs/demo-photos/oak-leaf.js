/** The bookmark whose outline is a drawing of its project: that very drawing, in inches. */
import { readFileSync } from 'node:fs';
import { PAPER, rectangle, sheet } from './paper.js';
import { onTable } from './table.js';

const DRAWING = new URL('../../projects/oak-leaf-bookmark/shapes/leaf.svg', import.meta.url);

export function oakLeaf() {
  const [, path] = /<path d="([^"]+)"/.exec(readFileSync(DRAWING, 'utf8'));
  const inches = path.replace(/\d+(?:\.\d+)?/g, (mm) => (Number(mm) / 25.4).toFixed(4));
  const rib = sheet(rectangle(22 / 25.4 - 1 / 16, 2 / 25.4 + 3 / 8, 1 / 8, 2.5), PAPER.cream, 0.012);
  return onTable(190, 24, [44 / 25.4, 120 / 25.4], `${sheet(inches, PAPER.moss, 0.03)}${rib}`);
}
