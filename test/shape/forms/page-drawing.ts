import type { Length } from '../../../src/measure/length.ts';
import { printInches, printSize } from '../../../src/measure/print.ts';
import type { FlatPoint, Net, Panel } from '../../../src/shape/net.ts';
import { glueAreas } from '../../../src/shape/stacking/glue-areas.ts';

/** Millimeters of paper to millimeters of drawing. */
const SCALE = 0.5;
/** Room about the sheet for its numbers. */
const LEFT = 14;
const TOP = 8;
const RIGHT = 4;
const BOTTOM = 8;
const GAP = 12;
const LETTERS = 2.6;
/** A cardstock, in millimeters. */
const CALIPER = 0.3;

/**
 * The picture of a form's page: its sheets side by side at half size, as the net says. Cut lines continuous, mountain
 * folds chain, valley folds dashed, folds left flat dotted, waste hatched, glue dotted on this side and in crosses on the far one; score positions from the left
 * above, from the bottom at the side.
 */
export function pageDrawing(title: string, nets: readonly Net[]): string {
  let left = 0;
  const sheets = nets.map((net) => {
    const sheet = `<g transform="translate(${mm(left + LEFT)} ${TOP})">${sheetDrawing(net)}</g>`;
    left += LEFT + net.size.width.mm * SCALE + RIGHT + GAP;
    return sheet;
  });
  const width = mm(left - GAP);
  const height = mm(TOP + BOTTOM + Math.max(...nets.map((net) => net.size.height.mm)) * SCALE);
  const sizes = nets.map((net) => printSize(net.size, 'in')).join(' and ');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${title}, flat: ${sizes}" font-family="sans-serif" font-size="${LETTERS}" fill="none" stroke="#222" stroke-linejoin="round">
<rect width="100%" height="100%" fill="#fff" stroke="none"/>
<defs>
<pattern id="waste" width="2" height="2" patternTransform="rotate(45)" patternUnits="userSpaceOnUse"><path d="M0,0V2" stroke="#999" stroke-width="0.3"/></pattern>
<pattern id="glue-outside" width="1.8" height="1.8" patternUnits="userSpaceOnUse"><circle cx="0.9" cy="0.9" r="0.25" fill="#888" stroke="none"/></pattern>
<pattern id="glue-inside" width="2.4" height="2.4" patternUnits="userSpaceOnUse"><path d="M0.7,1.2H1.7M1.2,0.7V1.7" stroke="#666" stroke-width="0.2"/></pattern>
</defs>
${sheets.join('\n')}
</svg>
`;
}

function sheetDrawing(net: Net): string {
  const waste = net.waste.map(
    (part) => `<path d="${path(part, true)}" fill="url(#waste)" stroke="#999" stroke-width="0.15"/>`,
  );
  const glued = glueAreas(net, CALIPER).map(({ from }) => from);
  return [
    ...waste,
    ...glued.flatMap(({ face, areas }) =>
      areas.map((area) => `<path d="${path(area, true)}" fill="url(#glue-${face})" stroke="none"/>`),
    ),
    ...foldLines(net),
    `<path d="${net.panels.flatMap((panel) => cutEdges(net, panel)).join('')}" stroke-width="0.4"/>`,
    ...(net.openings ?? []).map(({ outline }) => `<path d="${path(outline, true)}" stroke-width="0.4"/>`),
    ...net.panels.map((panel) => name(panel)),
    ...numbers(net),
  ].join('\n');
}

const DASHES = { mountain: '3.6 0.8 0.5 0.8', valley: '1.8 0.9', flat: '0.4 0.8' };

/** Folds that run on from one another are one line, so that their dashes do. */
function foldLines(net: Net): string[] {
  return (['mountain', 'valley', 'flat'] as const).flatMap((kind) => {
    const chains: FlatPoint[][] = [];
    for (const { from, to } of net.folds.filter(({ direction }) => direction === kind)) {
      const chain = chains.find((points) =>
        points.some((point, index) => index === points.length - 1 && same(point, from)),
      );
      if (chain) chain.push(to);
      else chains.push([from, to]);
    }
    return chains.map(
      (chain) => `<path d="${path(chain, false)}" stroke-width="0.25" stroke-dasharray="${DASHES[kind]}"/>`,
    );
  });
}

/** The edges of a panel that are no folds. */
function cutEdges(net: Net, { outline }: Panel): string[] {
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from;
    const folded = net.folds.some(
      (fold) => (same(fold.from, from) && same(fold.to, to)) || (same(fold.from, to) && same(fold.to, from)),
    );
    return folded ? [] : [path([from, to], false)];
  });
}

function name({ id, box }: Panel): string {
  const center = { x: box.left.plus(box.right).half(), y: box.top.plus(box.bottom).half() };
  const [width, height] = [box.right.minus(box.left).mm * SCALE, box.bottom.minus(box.top).mm * SCALE];
  const words = id.split('-');
  const longest = Math.max(...words.map((word) => word.length)) * LETTERS * 0.56;
  const upright = longest > width && height > width;
  const size = Math.min(
    LETTERS,
    (LETTERS * (upright ? height : width)) / (longest + 1),
    (upright ? width : height) / (words.length * 1.15),
  );
  const turn = upright ? ` rotate(-90)` : '';
  const lines = words.map((word, index) => {
    const down = (index - (words.length - 1) / 2) * size * 1.1 + size * 0.35;
    return `<tspan x="0" y="${mm(down)}">${word}</tspan>`;
  });
  return `<text transform="translate(${x(center)} ${y(center)})${turn}" font-size="${mm(size)}" text-anchor="middle" fill="#222" stroke="#fff" stroke-width="0.9" paint-order="stroke">${lines.join('')}</text>`;
}

function numbers(net: Net): string[] {
  const { width, height } = net.size;
  const label = (text: string, at: readonly [number, number], anchor: string): string =>
    `<text x="${mm(at[0])}" y="${mm(at[1])}" font-size="2.2" text-anchor="${anchor}" fill="#222" stroke="none">${text}</text>`;
  const marks = net.scores.flatMap(({ from, at }) =>
    at.map((position) => {
      const text = printInches(position, 'set');
      if (from === 'left') return label(text, [position.mm * SCALE, -1.5], 'middle');
      return label(text, [-1.5, height.minus(position).mm * SCALE + 0.8], 'end');
    }),
  );
  return [
    ...marks,
    label(printSize(net.size, 'in', 'set'), [(width.mm * SCALE) / 2, height.mm * SCALE + 5], 'middle'),
  ];
}

function same(a: FlatPoint, b: FlatPoint): boolean {
  return a.x.equals(b.x) && a.y.equals(b.y);
}

function path(points: readonly FlatPoint[], closed: boolean): string {
  return (
    points.map((point, index) => `${index === 0 ? 'M' : 'L'}${x(point)},${y(point)}`).join('') +
    (closed ? 'Z' : '')
  );
}

const x = (point: FlatPoint): number => at(point.x);
const y = (point: FlatPoint): number => at(point.y);
const at = (length: Length): number => mm(length.mm * SCALE);

/** To a hundredth of a millimeter. */
function mm(value: number): number {
  return Math.round(value * 100) / 100;
}
