/** Monoline letters on a line at y = 0, in tenths of an inch: only those the scenes need. */
const LETTERS = {
  t: [2.4, 'M1 -5.4 V-0.9 Q1 0 2 0 M0 -3.8 H2.2'],
  h: [3.4, 'M0 -6.2 V0 M0 -2 Q0.3 -3.9 1.6 -3.9 Q2.7 -3.9 2.7 -2.3 V0'],
  a: [3.6, 'M2.8 -3.9 V0 M2.8 -1.95 A1.4 1.95 0 1 0 0 -1.95 A1.4 1.95 0 1 0 2.8 -1.95'],
  n: [3.4, 'M0 -3.9 V0 M0 -2 Q0.3 -3.9 1.6 -3.9 Q2.7 -3.9 2.7 -2.3 V0'],
  k: [3, 'M0 -6.2 V0 M2.4 -3.9 L0 -1.5 M0.9 -2.3 L2.6 0'],
  y: [3.3, 'M0 -3.9 L1.4 -0.1 M2.8 -3.9 L1 0.9 Q0.5 2.1 -0.6 1.9'],
  o: [3.6, 'M2.8 -1.95 A1.4 1.95 0 1 0 0 -1.95 A1.4 1.95 0 1 0 2.8 -1.95'],
  u: [3.4, 'M0 -3.9 V-1.6 Q0 0 1.3 0 Q2.5 0 2.8 -1.8 M2.8 -3.9 V0'],
  b: [3.5, 'M0 -6.2 V0 M0 -1.95 A1.4 1.95 0 1 1 2.8 -1.95 A1.4 1.95 0 1 1 0 -1.95'],
  v: [3, 'M0 -3.9 L1.3 0 L2.6 -3.9'],
  g: [
    3.6,
    'M2.8 -3.9 V0.4 Q2.8 1.9 1.4 1.9 Q0.5 1.9 0.1 1.3 M2.8 -1.95 A1.4 1.95 0 1 0 0 -1.95 A1.4 1.95 0 1 0 2.8 -1.95',
  ],
  e: [3.4, 'M0 -2.1 H2.7 Q2.7 -3.9 1.4 -3.9 Q0 -3.9 0 -1.95 Q0 0 1.5 0 Q2.2 0 2.7 -0.6'],
  ' ': [2.4, ''],
};

/** `text` centered on (x, y), the baseline, in the scene's inches; `size` is a tenth of an inch at 0.1. */
export function lettering(text, x, y, size) {
  let at = 0;
  const strokes = [...text].map((letter) => {
    const [advance, strokePath] = LETTERS[letter];
    const drawn = `<path transform="translate(${at} 0)" d="${strokePath}"/>`;
    at += advance + 0.5;
    return drawn;
  });
  return `<g transform="translate(${x} ${y}) scale(${size}) skewX(-9) translate(${-(at - 0.5) / 2} 0)" fill="none"
    stroke="#23405c" stroke-width="0.52" stroke-linecap="round" stroke-linejoin="round">${strokes.join('')}</g>`;
}
