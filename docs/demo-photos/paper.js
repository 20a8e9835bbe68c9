/** Paper as the demo pictures show it: its colors, its prints, and a sheet with the shadow it throws. */

export const PAPER = {
  harbour: '#2f4b66',
  cream: '#f3ead6',
  ripple: '#9fb8c4',
  driftwood: '#b3906a',
  brick: '#9c4a3c',
  moss: '#6b7f5b',
  fern: '#a9b99a',
};

/** A number from -1 to 1 that looks random and is the same each run. */
export function noise(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

/** Blurs, the light and the prints; every scene needs them once. */
export const DEFINITIONS = `
  <filter id="close" x="-10%" y="-10%" width="120%" height="120%"><feGaussianBlur stdDeviation="0.014"/></filter>
  <filter id="far" x="-20%" y="-20%" width="140%" height="140%"><feGaussianBlur stdDeviation="0.07"/></filter>
  <filter id="near" x="-20%" y="-20%" width="140%" height="140%"><feGaussianBlur stdDeviation="2.2"/></filter>
  <filter id="soft" x="-40%" y="-40%" width="180%" height="180%"><feGaussianBlur stdDeviation="16"/></filter>
  <filter id="wide" x="-60%" y="-60%" width="220%" height="220%"><feGaussianBlur stdDeviation="46"/></filter>
  <filter id="plank" x="0" y="0" width="100%" height="100%">
    <feTurbulence type="fractalNoise" baseFrequency="0.0035 0.085" numOctaves="4" seed="11"/>
    <feColorMatrix values="0 0 0 0 0.33  0 0 0 0 0.22  0 0 0 0 0.13  0.9 0 0 0 -0.33"/>
  </filter>
  <linearGradient id="board" x1="0" y1="0" x2="0" y2="1">
    <stop offset="0.52" stop-color="#c9a77e" stop-opacity="0"/>
    <stop offset="0.54" stop-color="#c9a77e"/>
  </linearGradient>
  <linearGradient id="wall" x1="0" y1="0" x2="1" y2="0.3">
    <stop offset="0" stop-color="#dcd6c8"/>
    <stop offset="1" stop-color="#a9a496"/>
  </linearGradient>
  <linearGradient id="fade" x1="0" y1="0" x2="0" y2="1">
    <stop offset="0.53" stop-color="#000"/>
    <stop offset="0.62" stop-color="#fff"/>
  </linearGradient>
  <mask id="table"><rect width="1600" height="1200" fill="url(#fade)"/></mask>
  <radialGradient id="lamp" cx="30%" cy="18%" r="95%">
    <stop offset="0" stop-color="#fff6e2" stop-opacity="0.55"/>
    <stop offset="0.5" stop-color="#fff6e2" stop-opacity="0.08"/>
    <stop offset="1" stop-color="#1c1410" stop-opacity="0.42"/>
  </radialGradient>
  <linearGradient id="sheen" x1="0" y1="0" x2="1" y2="1">
    <stop offset="0" stop-color="#ffffff" stop-opacity="0.16"/>
    <stop offset="0.55" stop-color="#ffffff" stop-opacity="0"/>
    <stop offset="1" stop-color="#000000" stop-opacity="0.10"/>
  </linearGradient>
  <pattern id="ripple" width="0.5" height="0.26" patternUnits="userSpaceOnUse">
    <rect width="0.5" height="0.26" fill="${PAPER.ripple}"/>
    <path d="M-0.25 0.13 q0.125 -0.16 0.25 0 t0.25 0 t0.25 0 t0.25 0" fill="none" stroke="#dbe7ec" stroke-width="0.03"/>
    <path d="M-0.25 0.2 q0.125 -0.16 0.25 0 t0.25 0 t0.25 0 t0.25 0" fill="none" stroke="#7e9dac" stroke-width="0.016"/>
  </pattern>
  <pattern id="fern" width="0.6" height="0.8" patternUnits="userSpaceOnUse">
    <rect width="0.6" height="0.8" fill="${PAPER.fern}"/>
    ${[
      [0.15, 0.4],
      [0.45, 0.8],
      [0.45, 0],
    ]
      .map(
        ([x, y]) => `<g transform="translate(${x} ${y})" fill="none" stroke="#6d8560" stroke-width="0.018"
      stroke-linecap="round"><path d="M0 0.3 Q0.02 0 0 -0.26"/>${[0.18, 0.06, -0.06, -0.16]
        .map((at) => `<path d="M0 ${at} q-0.06 -0.02 -0.1 -0.1 M0 ${at} q0.06 -0.02 0.1 -0.1"/>`)
        .join('')}</g>`,
      )
      .join('')}
  </pattern>`;

/** One sheet of paper: a close and a wide shadow, the paper, and the light on it. `lift` is its height, in inches. */
export function sheet(outline, fill, lift = 0.02) {
  const drop = (times) => `translate(${lift * times} ${lift * times * 1.2})`;
  return `<path d="${outline}" transform="${drop(2.5)}" fill="#1a120b" opacity="0.28" filter="url(#far)"/>
    <path d="${outline}" transform="${drop(0.7)}" fill="#1a120b" opacity="0.5" filter="url(#close)"/>
    <path d="${outline}" fill="${fill}"/><path d="${outline}" fill="url(#sheen)"/>`;
}

export function rectangle(left, top, width, height, radius = 0) {
  const arc = (x, y) => (radius ? `a${radius} ${radius} 0 0 1 ${x} ${y}` : '');
  return `M${left + radius} ${top} h${width - 2 * radius} ${arc(radius, radius)} v${height - 2 * radius}
    ${arc(-radius, radius)} h${2 * radius - width} ${arc(-radius, -radius)} v${2 * radius - height} ${arc(radius, -radius)}z`;
}
