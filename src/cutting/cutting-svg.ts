import { element, escapeText, pathData } from '../drawing/svg.ts';
import { xmlDocument } from '../words/safe-html.ts';
import type { CuttingPlan } from './cutting-plan.ts';
import type { CutPath } from './sheet-paths.ts';

/** White above the mats, for their titles. */
const ABOVE = 12;

/** A plan as an SVG document, a unit a millimeter: the groups `cut`, `score` and `names`, a path each line. */
export function cuttingSvg({ width, height, cuts, scores, names }: CuttingPlan, title: string): string {
  const captions = names.map(({ text, at }) => element('text', { x: at.x, y: at.y }, escapeText(text)));
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height + ABOVE}mm`,
      viewBox: `0 ${-ABOVE} ${width} ${height + ABOVE}`,
      fill: 'none',
      stroke: '#000',
      'stroke-width': 0.1,
    },
    element('title', {}, escapeText(title)),
    group('cut', cuts),
    group('score', scores),
    element(
      'g',
      { id: 'names', fill: '#000', stroke: 'none', 'font-family': 'sans-serif', 'font-size': 3 },
      ...captions,
    ),
  );
  return xmlDocument(svg);
}

function group(id: string, paths: readonly CutPath[]): string {
  return element(
    'g',
    { id },
    ...paths.map(({ points, closed }) => element('path', { d: pathData(points, closed) })),
  );
}
