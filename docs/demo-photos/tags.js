/** The six tags of one project side by side, each in its own outline. */
import { PAPER, sheet } from './paper.js';
import { onTable } from './table.js';

const closed = (points) => `M${points.map(([x, y]) => `${x.toFixed(4)} ${y.toFixed(4)}`).join(' L')}z`;

const round = (angle, radius) => [radius * Math.cos(angle), radius * Math.sin(angle)];

/** A circle with half circles along its edge, about its middle. */
function scallops(across, count) {
  const half = Math.PI / count;
  const valley = across / 2 / (Math.cos(half) + Math.sin(half));
  const radius = valley * Math.sin(half);
  const points = Array.from({ length: count }, (_, index) => round((2 * index + 1) * half, valley));
  const [first, ...rest] = [...points, points[0]].map(([x, y]) => `${x} ${y}`);
  return `M${first}${rest.map((to) => ` A${radius} ${radius} 0 0 1 ${to}`).join('')}z`;
}

function ellipse(width, height) {
  const [a, b] = [width / 2, height / 2];
  return `M${-a} 0 A${a} ${b} 0 0 1 ${a} 0 A${a} ${b} 0 0 1 ${-a} 0z`;
}

function hexagon(across) {
  return closed(Array.from({ length: 6 }, (_, index) => round((index * Math.PI) / 3, across / 2)));
}

function tag(width, height, clip) {
  const [x, y] = [width / 2, height / 2];
  return closed([
    [-x, clip - y],
    [clip - x, -y],
    [x - clip, -y],
    [x, clip - y],
    [x, y],
    [-x, y],
  ]);
}

function arch(width, height) {
  const [x, y] = [width / 2, height / 2];
  return `M${-x} ${y} V${x - y} A${x} ${x} 0 0 1 ${x} ${x - y} V${y}z`;
}

function banner(width, height, notch) {
  const [x, y] = [width / 2, height / 2];
  return closed([
    [-x, -y],
    [x, -y],
    [x, y],
    [0, y - notch],
    [-x, y],
  ]);
}

const hole = (y) => `<circle cy="${y}" r="0.07" fill="#3a2c1e"/>`;

const twine = (y, sway) => `<path d="M0.02 ${y} C0.1 ${y - 0.4} ${sway} ${y - 0.5} ${sway * 1.3} ${y - 0.95}
  M-0.02 ${y} C-0.1 ${y - 0.35} ${sway - 0.2} ${y - 0.55} ${sway * 1.3 - 0.16} ${y - 0.9}"
  fill="none" stroke="#d8c39a" stroke-width="0.035" stroke-linecap="round"/>`;

const written = (...lines) =>
  lines
    .map(
      ([
        x,
        y,
        width,
      ]) => `<path d="M${x} ${y} q${width / 8} -0.07 ${width / 4} 0 t${width / 4} 0 t${width / 4} 0 t${width / 4} 0"
      fill="none" stroke="#3d4a3a" stroke-width="0.025" stroke-linecap="round"/>`,
    )
    .join('');

const at = (x, y, degrees, drawn) => `<g transform="translate(${x} ${y}) rotate(${degrees})">${drawn}</g>`;

export function tags() {
  const { moss, cream, harbour, brick } = PAPER;
  return onTable(
    172,
    -3,
    [7, 5.4],
    [
      at(
        1.1,
        1.5,
        -8,
        `${sheet(scallops(2, 12), moss, 0.03)}${sheet(ellipse(1.25, 1.25), cream, 0.014)}
        ${written([-0.35, -0.08, 0.7], [-0.25, 0.16, 0.5])}${hole(-0.8)}${twine(-0.8, -0.35)}`,
      ),
      at(
        3.2,
        1.9,
        5,
        `${sheet(tag(1.75, 3.25, 0.5), harbour, 0.03)}${sheet(tag(1.5, 3, 0.4375), cream, 0.014)}
        ${written([-0.5, -0.3, 1], [-0.5, 0.05, 0.9], [-0.5, 0.4, 0.6])}${hole(-1.2)}${twine(-1.2, 0.3)}`,
      ),
      at(
        5.7,
        1.6,
        9,
        `${sheet(arch(1.75, 2.5), brick, 0.03)}${sheet(arch(1.5, 2.25), cream, 0.014)}
        ${written([-0.45, 0.1, 0.9], [-0.35, 0.42, 0.7])}${hole(-0.85)}${twine(-0.85, 0.35)}`,
      ),
      at(1.5, 4.1, 62, `${sheet(banner(0.75, 3.5, 0.375), brick, 0.03)}${hole(-1.5)}${twine(-1.5, -0.2)}`),
      at(
        5.1,
        4.3,
        -6,
        `${sheet(hexagon(2), moss, 0.03)}${sheet(ellipse(1.25, 1), cream, 0.014)}
        ${written([-0.4, -0.02, 0.8])}${hole(-0.68)}${twine(-0.68, 0.3)}`,
      ),
    ].join(''),
  );
}
