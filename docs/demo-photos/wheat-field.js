/** The wheat field card as it lies on the table: lace at its top and bottom, the stamped field in its frame. */

import { PAPER, rectangle, sheet } from './paper.js';
import { onTable } from './table.js';

/** The mat's outline with ten round motifs along its top and bottom edge, 3/8 in apart, the first 3/16 in in. */
function laceMat(left, top, width, height) {
  const holes = (y, sweep) =>
    Array.from({ length: 10 }, (_, index) => {
      const x = left + 0.1875 + index * 0.375;
      return `M${x} ${y} h0.25 a0.125 0.125 0 0 ${sweep} -0.25 0z`;
    }).join('');
  const dots = (y) =>
    Array.from({ length: 10 }, (_, index) => {
      const x = left + 0.3125 + index * 0.375;
      return `M${x - 0.04} ${y} a0.04 0.04 0 1 0 0.08 0 a0.04 0.04 0 1 0 -0.08 0z`;
    }).join('');
  const lace = holes(top, 1) + holes(top + height, 0) + dots(top + 0.25) + dots(top + height - 0.25);
  return `${sheet(rectangle(left, top, width, height), PAPER.cream, 0.012)}
    <path d="${lace}" fill="${PAPER.driftwood}"/>
    <path d="${lace}" fill="none" stroke="#7c6140" stroke-width="0.012" opacity="0.6"/>`;
}

/** An ear of wheat, 3/4 in wide and 3 in high, from its top left corner. */
function wheat(left, top) {
  const grains = Array.from({ length: 7 }, (_, index) => {
    const y = 0.32 + index * 0.17;
    return `<path d="M0.375 ${y} q-0.05 -0.2 -0.22 -0.26 q-0.01 0.2 0.22 0.26 q0.05 -0.2 0.22 -0.26 q0.01 0.2 -0.22 0.26"/>`;
  }).join('');
  return `<g transform="translate(${left} ${top})" fill="#c9a14a" stroke="#a8842f" stroke-width="0.018"
    stroke-linecap="round"><path d="M0.375 0.02 q-0.07 0.1 0 0.26 q0.07 -0.16 0 -0.26"/>${grains}
    <path d="M0.375 0.3 V3" fill="none"/><path d="M0.375 2.3 q0.26 -0.1 0.34 -0.5" fill="none"/></g>`;
}

/** A poppy, 1 in wide and 2 in high. */
function poppy(left, top) {
  return `<g transform="translate(${left} ${top})"><path d="M0.5 0.6 Q0.56 1.4 0.46 2.2" fill="none" stroke="#5f7350"
    stroke-width="0.03"/><g fill="#b5442f" stroke="#8e2f1f" stroke-width="0.016">
    <path d="M0.5 0.52 C0.1 0.6 -0.02 0.2 0.26 0.08 C0.4 0.04 0.5 0.2 0.5 0.52z"/>
    <path d="M0.5 0.52 C0.9 0.6 1.02 0.2 0.74 0.08 C0.6 0.04 0.5 0.2 0.5 0.52z"/>
    <path d="M0.5 0.5 C0.2 0.5 0.2 0.86 0.5 0.86 C0.8 0.86 0.8 0.5 0.5 0.5z"/></g>
    <circle cx="0.5" cy="0.5" r="0.09" fill="#2f2620"/></g>`;
}

/** Grasses that run off the lower edge of the panel. */
function grasses(left, top, width) {
  const blades = Array.from({ length: 44 }, (_, index) => {
    const x = 0.04 + (index * (width - 0.08)) / 43;
    const [lean, height] = [((index * 7) % 5) * 0.05 - 0.1, 0.3 + ((index * 11) % 7) * 0.05];
    return `<path d="M${x} 0.63 q${lean * 0.2} ${-height * 0.6} ${lean} ${-height}"/>`;
  }).join('');
  return `<clipPath id="panel"><path d="${rectangle(0, -3.125, width, 3.75)}"/></clipPath>
    <g transform="translate(${left} ${top})" clip-path="url(#panel)" fill="none" stroke="#5f7350" stroke-width="0.026"
    stroke-linecap="round">${blades}</g>`;
}

export function wheatFieldCard() {
  const [left, top] = [0.5, 0.875];
  return onTable(
    176,
    6,
    [4.25, 5.5],
    `${sheet(rectangle(0.03, 0.02, 4.25, 5.5), '#a5835d', 0.05)}
    ${sheet(rectangle(0, 0, 4.25, 5.5), PAPER.driftwood, 0.03)}
    ${laceMat(0.125, 0.125, 4, 5.25)}
    ${sheet(rectangle(0.375, 0.75, 3.5, 4), PAPER.brick, 0.014)}
    ${sheet(rectangle(left, top, 3.25, 3.75), PAPER.cream, 0.012)}
    ${wheat(left + 0.375, top + 0.375)}${wheat(left + 1.25, top + 0.375)}${poppy(left + 2.125, top + 0.75)}
    ${grasses(left, top + 3.125, 3.25)}
    <path d="M0.03 0 V5.5" stroke="#fff" stroke-width="0.02" opacity="0.25"/>`,
  );
}
