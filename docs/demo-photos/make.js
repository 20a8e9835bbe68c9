/**
 * Renders the still pictures of the demo workspace: `node docs/demo-photos/make.js`.
 *
 * They stand in for photographs, so that the picture pipeline has something real to shrink, sharpen and caption.
 * Every scene is drawn to the project's own measurements (inches), lit from the upper left, and grained with noise
 * from a fixed seed, so that a second run draws the same picture.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { lettering } from './lettering.js';
import { lighthouseCard } from './lighthouse.js';
import { oakLeaf } from './oak-leaf.js';
import { DEFINITIONS, noise, PAPER, rectangle, sheet } from './paper.js';
import { sixSidedPot } from './six-sided-pot.js';
import { standingBox } from './standing-box.js';
import { HEIGHT, LIGHT, onTable, TABLE_AND_WALL, TABLE_TOP, WIDTH } from './table.js';
import { tags } from './tags.js';
import { wheatFieldCard } from './wheat-field.js';

const PROJECTS = fileURLToPath(new URL('../../projects/', import.meta.url));

/** Film grain and paper tooth in one: a gray picture around 128, laid over the scene as soft light. */
async function grain(seed, strength, blur) {
  const next = noise(seed);
  const pixels = Buffer.alloc(WIDTH * HEIGHT);
  for (let i = 0; i < pixels.length; i += 1) pixels[i] = 128 + Math.round(next() * strength);
  const picture = sharp(pixels, { raw: { width: WIDTH, height: HEIGHT, channels: 1 } });
  return (blur ? picture.blur(blur) : picture).png().toBuffer();
}

function bookmark() {
  const next = noise(5);
  const strands = Array.from({ length: 26 }, () => {
    const [sway, end] = [next() * 0.22, next() * 0.12];
    return `<path d="M1 -0.62 C${1 + sway * 0.5} -0.95 ${1 + sway} -1.2 ${1.08 + sway * 1.35} ${-1.72 + end}"/>`;
  }).join('');
  const floss = (
    stroke,
    width,
    extra = '',
  ) => `<g fill="none" stroke="${stroke}" stroke-width="${width}" ${extra}
    stroke-linecap="round">${strands}<path d="M1 0.13 C0.94 -0.1 0.95 -0.35 1 -0.62 M1 0.13 C1.07 -0.1 1.05 -0.35 1 -0.62"/></g>`;
  const rays = Array.from(
    { length: 12 },
    (_, i) => `<path d="M0 -0.15 V-0.22" transform="rotate(${i * 30})"/>`,
  );
  return onTable(
    128,
    24,
    [2, 5.6],
    `${sheet(rectangle(0, 0, 2, 7, 0.25), PAPER.harbour)}
    ${sheet(rectangle(0.125, 0.125, 1.75, 6.75, 0.25), PAPER.cream, 0.012)}
    ${sheet(rectangle(0.25, 0.25, 1.5, 6.5), 'url(#ripple)', 0.012)}
    <g transform="rotate(45 1 1.5625)">${sheet(rectangle(0.5625, 1.125, 0.875, 0.875), PAPER.harbour, 0.014)}
    ${sheet(rectangle(0.6875, 1.25, 0.625, 0.625), PAPER.cream, 0.012)}</g>
    <g transform="translate(1 1.5625)" stroke="#b98a2c" fill="none" stroke-width="0.025" stroke-linecap="round">
    <circle r="0.1" fill="#c99a3a"/>${rays.join('')}</g>
    <circle cx="1" cy="0.44" r="0.07" fill="#2a2018"/>
    <g transform="translate(0 0.3)">${floss('#2a1c10', 0.05, 'opacity="0.35" filter="url(#close)" transform="translate(0.05 0.06)"')}
    ${floss('#efe3c8', 0.035)}${floss('#d3c29c', 0.009)}
    <path d="M0.93 -0.6 h0.14" stroke="#d8c8a4" stroke-width="0.1" stroke-linecap="round"/></g>`,
  );
}

function thankYouCard() {
  return onTable(
    176,
    -7,
    [4.25, 5.5],
    `${sheet(rectangle(0.03, 0.02, 4.25, 5.5), '#a5835d', 0.05)}
    ${sheet(rectangle(0, 0, 4.25, 5.5), PAPER.driftwood, 0.03)}
    ${sheet(rectangle(0.125, 0.125, 4, 5.25), PAPER.harbour, 0.012)}
    ${sheet(rectangle(0.25, 0.25, 3.75, 5), 'url(#ripple)', 0.012)}
    ${sheet(rectangle(0.5, 3.5, 3.25, 1), PAPER.harbour, 0.02)}
    ${sheet(rectangle(0.625, 3.625, 3, 0.75), PAPER.cream, 0.012)}
    ${lettering('thank you', 2.125, 4.13, 0.07)}
    <path d="M0.03 0 V5.5" stroke="#fff" stroke-width="0.02" opacity="0.25"/>`,
  );
}

/** The flat box of the short pencil box project: its cut outline, and its score lines from left and bottom. */
function flatBox() {
  const cut = `M0.156 0.625 H1.094 L1.25 1.25 V0 H3.75 V1.25 L3.906 0.625 H4.844 L5 1.25 V0 H7.5 V1.25 L8 1.375
    V5.375 L7.5 5.5 V6.75 H5 V5.5 L4.75 6.75 H4 L3.75 5.5 V6.75 H1.25 V5.5 L1 6.75 H0.25 L0 5.5 V1.25z`;
  const slits = [1.25, 3.75, 5].map((x) => `M${x} 0 V1.25 M${x} 5.5 V6.75`).join('');
  const scores = `${[1.25, 3.75, 5, 7.5].map((x) => `M${x} 1.25 V5.5`).join('')} M0 1.25 H7.5 M0 5.5 H7.5
    M1.25 0.625 H3.75 M5 0.625 H7.5`;
  return onTable(
    150,
    -4,
    [8, 6.75],
    `${sheet(cut, PAPER.harbour, 0.045)}
    <path d="${slits}" stroke="#14202c" stroke-width="0.014" fill="none"/>
    <path d="${scores}" stroke="#16283a" stroke-width="0.035" fill="none"/>
    <path d="${scores}" transform="translate(0.02 0.02)" stroke="#7f9bb5" stroke-width="0.016" fill="none" opacity="0.8"/>`,
  );
}

function pencilBox() {
  return standingBox({
    width: 2.5,
    depth: 1.25,
    height: 4.25,
    flange: 0.625,
    scale: 158,
    color: PAPER.harbour,
    shades: { side: -0.32, top: 0.1, flange: -0.08 },
    layers: `${sheet(rectangle(0.125, 0.125, 2.25, 4), 'url(#ripple)', 0.012)}
      ${sheet(rectangle(0.25, 0.875, 2, 1.25), PAPER.harbour, 0.012)}
      ${sheet(rectangle(0.375, 1, 1.75, 1), PAPER.cream, 0.012)}
      <g transform="translate(1.25 1.5)" fill="none" stroke="#23405c" stroke-width="0.05" stroke-linecap="round">
      <circle cy="-0.29" r="0.06"/><path d="M0 -0.22 V0.32 M-0.16 -0.12 H0.16 M-0.3 0.1 Q-0.24 0.3 0 0.33 Q0.24 0.3 0.3 0.1"/></g>`,
  });
}

function gateFoldCard() {
  const gate = (left) => `${sheet(rectangle(left, 0, 2.75, 4.25), PAPER.brick, 0.025)}
    ${sheet(rectangle(left + 0.125, 0.125, 2.5, 4), 'url(#ripple)', 0.012)}`;
  return onTable(
    184,
    5,
    [5.5, 4.25],
    `${sheet(rectangle(0.01, 0.02, 5.5, 4.25), '#84392d', 0.05)}${gate(2.75)}${gate(0)}
    ${sheet(rectangle(2, 1.375, 1.5, 1.5, 0.75), PAPER.cream, 0.02)}
    <g transform="rotate(45 2.75 2.125)">${sheet(rectangle(2.375, 1.75, 0.75, 0.75, 0.125), PAPER.brick, 0.012)}</g>`,
  );
}

function seedKeeper() {
  return standingBox({
    width: 3.5,
    depth: 1,
    height: 4.75,
    flange: 0.5,
    scale: 140,
    color: PAPER.moss,
    shades: { side: -0.3, top: 0.1, flange: -0.08 },
    layers: `${sheet(rectangle(0.125, 0.125, 3.25, 4.5), PAPER.cream, 0.012)}
      ${sheet(rectangle(0.375, 0.125, 0.75, 4.5), 'url(#fern)', 0.01)}
      ${sheet(rectangle(1.125, 1.625, 2, 0.75, 0.125), PAPER.cream, 0.016)}
      <g transform="translate(2.125 2) rotate(72)" fill="none" stroke="#5c6f4d" stroke-width="0.03" stroke-linecap="round">
      <path d="M0 0.62 V-0.5"/>${[-0.4, -0.24, -0.08, 0.08]
        .map(
          (at) =>
            `<path d="M0 ${at} q-0.03 -0.15 -0.15 -0.2 q-0.01 0.14 0.15 0.2 q0.03 -0.15 0.15 -0.2 q0.01 0.14 -0.15 0.2" fill="#7f9270"/>`,
        )
        .join('')}</g>`,
  });
}

function pencilPot() {
  const strip = sheet(rectangle(0.125, 0.125, 1.25, 3.75), 'url(#ripple)', 0.012);
  return sixSidedPot({
    side: 1.5,
    height: 4,
    scale: 150,
    color: PAPER.harbour,
    inside: '#d9d3c6',
    layers: {
      0: `${strip}${sheet(rectangle(0.25, 0.75, 1, 1, 0.5), PAPER.cream, 0.016)}
        <g transform="translate(0.75 1.25) rotate(40)" fill="none" stroke="#23405c" stroke-width="0.045" stroke-linejoin="round">
        <path d="M-0.07 0.34 H0.07 V-0.2 L0 -0.36 L-0.07 -0.2z M-0.07 -0.2 H0.07"/></g>`,
      1: '',
      5: '',
    },
    pencils: [
      { from: [0.4, 1.9], to: [-0.1, 2.3, 6.0], fill: '#b98a2c' },
      { from: [1.2, 1.8], to: [1.8, 2.2, 6.1], fill: '#9c4a3c' },
      { from: [0.7, 1.3], to: [0.9, 1.5, 6.3], fill: '#6b7f5b' },
      { from: [1.1, 0.9], to: [1.5, 0.7, 5.6], fill: '#2f2a26' },
    ],
  });
}

/** The large and the small box of one project side by side. */
function bulbBoxes() {
  const crocus = `<g fill="none" stroke="#6b4d86" stroke-width="0.03" stroke-linecap="round">
    <path d="M0 0.3 V0.02" stroke="#5c6f4d"/><path d="M0 0.3 q-0.12 -0.2 -0.2 -0.24 M0 0.3 q0.12 -0.2 0.2 -0.24" stroke="#5c6f4d"/>
    <path d="M0 0.02 q-0.2 -0.1 -0.13 -0.32 q0.1 0.08 0.13 0.2 q0.03 -0.12 0.13 -0.2 q0.07 0.22 -0.13 0.32z" fill="#a88bc4"/>
    <path d="M0 0.02 q-0.08 -0.2 0 -0.34 q0.08 0.14 0 0.34z" fill="#8f6db0"/></g>`;
  const box = (at, [width, depth, height]) => {
    const layers = `${sheet(rectangle(0.125, 0.125, width - 0.25, height - 0.25), PAPER.cream, 0.012)}
      ${sheet(rectangle(0.25, 0.25, width - 0.5, height - 0.5), 'url(#fern)', 0.01)}
      <g transform="translate(${width / 2} 0.42) rotate(-3)">
      <path d="M0 0.16 L-0.1 -0.6 M0 0.16 L0.08 -0.6" stroke="#d3c29c" stroke-width="0.035" fill="none"/>
      ${sheet(rectangle(-0.625, 0, 1.25, 2.25, 0.125), PAPER.cream, 0.03)}
      <circle cy="0.17" r="0.07" fill="#4a3a2a"/><path d="M0 0.16 L-0.1 -0.6" stroke="#d3c29c" stroke-width="0.035"/>
      <g transform="translate(0 1.3) scale(1.7)">${crocus}</g></g>`;
    const shades = { side: -0.3, top: 0.1, flange: -0.08 };
    return standingBox({
      at,
      width,
      depth,
      height,
      flange: 0.5,
      scale: 128,
      color: PAPER.brick,
      shades,
      layers,
    });
  };
  return box([360, 900], [3, 1.5, 4]) + box([1010, 1085], [2, 1, 3]);
}

/** A card with a round window; what is behind it lies deeper, in the shadow of the paper's edge. */
function portholeCard() {
  const circle = 'M0.75 2.125 a1.375 1.375 0 1 1 2.75 0 a1.375 1.375 0 1 1 -2.75 0z';
  const front = `${rectangle(0, 0, 4.25, 5.5)} ${circle}`;
  return onTable(
    176,
    6,
    [4.25, 5.5],
    `${sheet(rectangle(0.03, 0.02, 4.25, 5.5), '#27405a', 0.05)}
    <path d="${rectangle(0.375, 0.375, 3.5, 3.5)}" fill="url(#ripple)"/>
    ${sheet(rectangle(1.5, 2.25, 1.25, 0.25), PAPER.brick, 0.012)}
    ${sheet('M1.75 2.125 V1.5 a0.375 0.375 0 0 1 0.75 0 V2.125z', PAPER.cream, 0.012)}
    <path d="${front}" fill-rule="evenodd" transform="translate(0.06 0.075)" fill="#1a120b" opacity="0.4"
      filter="url(#far)" clip-path="circle(1.375px at 2.125px 2.125px)"/>
    <path d="${front}" fill-rule="evenodd" fill="${PAPER.harbour}"/>
    <path d="${front}" fill-rule="evenodd" fill="url(#sheen)"/>
    <path d="${circle}" fill="none" stroke="#e9eef3" stroke-width="0.012" opacity="0.7"/>
    ${sheet(rectangle(0.75, 4, 2.75, 0.75, 0.125), PAPER.cream, 0.016)}
    ${lettering('bon voyage', 2.125, 4.5, 0.06)}
    <path d="M0.03 0 V5.5" stroke="#fff" stroke-width="0.02" opacity="0.25"/>`,
  );
}

async function photograph(background, scene, seed) {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">
    <defs>${DEFINITIONS}</defs>${background}${scene}${LIGHT}</svg>`;
  return sharp(Buffer.from(svg))
    .flatten({ background: '#c9a77e' })
    .composite([
      { input: await grain(seed, 60, 0.8), blend: 'soft-light' },
      { input: await grain(seed + 1, 110, 6), blend: 'soft-light' },
    ])
    .jpeg({ quality: 82, mozjpeg: true })
    .toBuffer();
}

const PICTURES = {
  'harbour-light-bookmark/photos/finished.jpg': [TABLE_TOP, bookmark],
  'three-layer-thank-you/photos/finished.jpg': [TABLE_TOP, thankYouCard],
  'short-pencil-box/photos/flat.jpg': [TABLE_TOP, flatBox],
  'gate-fold-valentine/photos/closed.jpg': [TABLE_TOP, gateFoldCard],
  'seed-packet-keeper/photos/finished.jpg': [TABLE_AND_WALL, seedKeeper],
  'short-pencil-box/photos/finished.jpg': [TABLE_AND_WALL, pencilBox],
  'six-sided-pencil-pot/photos/finished.jpg': [TABLE_AND_WALL, pencilPot],
  'bulb-box/photos/finished.jpg': [TABLE_AND_WALL, bulbBoxes],
  'wheat-field-card/photos/finished.jpg': [TABLE_TOP, wheatFieldCard],
  'plant-and-gift-tags/photos/finished.jpg': [TABLE_TOP, tags],
  'porthole-card/photos/finished.jpg': [TABLE_TOP, portholeCard],
  'oak-leaf-bookmark/photos/finished.jpg': [TABLE_TOP, oakLeaf],
  'lighthouse-pop-up/photos/open.jpg': [TABLE_AND_WALL, lighthouseCard],
};

for (const [index, [name, [background, scene]]] of Object.entries(PICTURES).entries()) {
  const file = path.join(PROJECTS, name);
  const picture = await photograph(background, scene(), 100 + index * 10);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, picture);
  console.log(`${name}  ${Math.round(picture.length / 1024)} kB`);
}
