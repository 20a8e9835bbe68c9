import { coordinate } from '../drawing/svg.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { Caption, CuttingPlan } from './cutting-plan.ts';
import type { CutPath } from './sheet-paths.ts';

/** A group code and its value, which stand on a line each. */
type DxfGroup = readonly [code: number, value: string | number];

const LAYERS = ['CUT', 'SCORE', 'NAMES'] as const;
type DxfLayer = (typeof LAYERS)[number];

/**
 * A plan as DXF, release 12 (AC1009), in millimeters with y upwards: polylines and lines on the layers CUT and SCORE,
 * texts on NAMES. Written by hand: the kept libraries write later releases, which fewer programs read. DxfGroup codes after
 * the published DXF reference for releases 11 and 12, from memory.
 */
export function cuttingDxf({ cuts, scores, names }: CuttingPlan): string {
  const groups: readonly DxfGroup[] = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, 4],
    ]),
    ...section('TABLES', [...lineTypes, ...layers()]),
    ...section('ENTITIES', [
      ...cuts.flatMap((path) => entityOf(path, 'CUT')),
      ...scores.flatMap((path) => entityOf(path, 'SCORE')),
      ...names.flatMap(textOf),
    ]),
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${code}\r\n${value}\r\n`).join('');
}

function section(name: string, groups: readonly DxfGroup[]): readonly DxfGroup[] {
  return [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']];
}

/** The one line type there is: what is no continuous line is several. */
const lineTypes: readonly DxfGroup[] = [
  [0, 'TABLE'],
  [2, 'LTYPE'],
  [70, 1],
  [0, 'LTYPE'],
  [2, 'CONTINUOUS'],
  [70, 64],
  [3, 'Solid line'],
  [72, 65],
  [73, 0],
  [40, 0],
  [0, 'ENDTAB'],
];

/** All in the color of the screen's ink: layers are told apart by name. */
function layers(): readonly DxfGroup[] {
  const each = LAYERS.flatMap((name): readonly DxfGroup[] => [
    [0, 'LAYER'],
    [2, name],
    [70, 0],
    [62, 7],
    [6, 'CONTINUOUS'],
  ]);
  return [[0, 'TABLE'], [2, 'LAYER'], [70, LAYERS.length], ...each, [0, 'ENDTAB']];
}

function entityOf({ points, closed }: CutPath, layer: DxfLayer): readonly DxfGroup[] {
  const [from, to, ...further] = points;
  if (from && to && further.length === 0) return [[0, 'LINE'], [8, layer], ...point(from), ...point(to, 1)];
  const vertices = points.flatMap((each): readonly DxfGroup[] => [[0, 'VERTEX'], [8, layer], ...point(each)]);
  const head: readonly DxfGroup[] = [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    ...point({ x: 0, y: 0 }),
    [70, closed ? 1 : 0],
  ];
  return [...head, ...vertices, [0, 'SEQEND'], [8, layer]];
}

function textOf({ text, at }: Caption): readonly DxfGroup[] {
  return [[0, 'TEXT'], [8, 'NAMES'], ...point(at), [40, 3], [1, escapeBeyondAscii(text)]];
}

/** The groups of a point: 10, 20, 30, or one more for a line's end. DXF's y runs upwards. */
function point({ x, y }: Point2, end: 0 | 1 = 0): readonly DxfGroup[] {
  return [
    [10 + end, coordinate(x)],
    [20 + end, coordinate(-y)],
    [30 + end, 0],
  ];
}

/** Release 12 knows no Unicode: what is no ASCII is written `\U+00E9`, as later releases read it. A line break would begin a group. */
function escapeBeyondAscii(text: string): string {
  return text
    .replaceAll(/[\s\p{Cc}]+/gu, ' ')
    .replaceAll(
      /[^ -~]/gu,
      (sign) => `\\U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );
}
