import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const DEMO = fileURLToPath(new URL('../../projects/', import.meta.url));

/** Every so many projects have a photo, and use the one paper that the benchmark changes. */
const PHOTO_EVERY = 4;
const PAPER_EVERY = 33;

/** Numbers from 0 up to 1, the same for the same seed (the constants of Numerical Recipes, 2nd edition, 7.1). */
export function randomFrom(seed) {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

/** Eighths of an inch as a sheet has them: `2 3/8`. */
function eighths(count) {
  const [whole, rest] = [Math.floor(count / 8), count % 8];
  return [...(whole > 0 || rest === 0 ? [whole] : []), ...(rest > 0 ? [`${rest}/8`] : [])].join(' ');
}

const FORMS = [
  ({ width, height }) =>
    `    card: { stock: PAPER, form: single-fold card, size: ${width} x ${height} }
    front: { stock: cream, cut: ${eighths(between(width) - 2)} x ${eighths(between(height) - 2)}, on: card.front }`,
  ({ width, height }) => `    tray: { stock: PAPER, form: tray, inside: ${width} x ${height} x 1 }`,
  ({ width }) => `    box: { stock: PAPER, form: tuck-end box, inside: ${width} x 1 1/2 x 3 }`,
  ({ width, height }) => `    bag: { stock: PAPER, form: envelope, card: ${width} x ${height} }`,
  ({ width }) => `    band: { stock: PAPER, form: belly band, around: ${width} x 1/2, height: 2 }`,
];

/** How many eighths a text such as `2 3/8` is. */
function between(text) {
  return text.split(' ').reduce((sum, part) => {
    const [top, bottom] = part.split('/').map(Number);
    return sum + (bottom ? (top * 8) / bottom : top * 8);
  }, 0);
}

const SENTENCES = [
  'Work on a clean table and keep the scraps.',
  'A bone folder makes the fold lie flat.',
  'Hold it against the light before you stick it.',
  'Leave the glue a minute before you go on.',
  'A ruler with a cork back stays where it is put.',
  'Cut the long side first.',
];

function sheetText(index, random, hasPhoto) {
  const pick = (list) => list[Math.floor(random() * list.length)];
  const size = {
    width: eighths(20 + Math.floor(random() * 14)),
    height: eighths(24 + Math.floor(random() * 12)),
  };
  const pieces = FORMS[index % FORMS.length](size);
  const [first] = /^\s+(\w+):/u.exec(pieces).slice(1);
  const layer = /\n\s+(\w+):/u.exec(pieces)?.[1];
  const prose = () => Array.from({ length: 3 + Math.floor(random() * 4) }, () => pick(SENTENCES)).join(' ');
  const paper = index % PAPER_EVERY === 0 ? 'shared.measured' : 'cream';
  return `---
title: Project ${index}
summary: ${pick(SENTENCES)}
session: 20${27 + (index % 3)}-0${1 + (index % 9)}-${10 + (index % 18)}
level: ${pick(['beginner', 'improver'])}
minutes: ${20 + Math.floor(random() * 8) * 5}
measurements:
  unit: in
  stock:
    cream: { name: Cream cardstock, sheet: 12 x 12, weight: 80 lb cover, price: 0.${30 + (index % 60)} }
  pieces:
${pieces.replaceAll('PAPER', paper)}
supplies:
  - { item: Bone folder, kind: tool }
  - { item: Score board, kind: tool }
  - { item: Trimmer, kind: tool }
  - { item: Double-sided tape, kind: adhesive }
---
${prose()}
${hasPhoto ? '\n![The finished piece on a table](photos/finished.jpg)\n' : ''}
## Score and fold :step{minutes=10}
Score :piece[${first}] as the template shows. ${prose()}

## Stick it :step{minutes=10}
${layer ? `Stick :piece[${layer}] to the front. ` : ''}${prose()}
`;
}

/** The demo's own projects come first, as they are but for their titles, then made-up ones of five forms. */
export async function writeWorkspace(folder, count, seed) {
  const random = randomFrom(seed);
  mkdirSync(folder, { recursive: true });
  for (const name of ['site.yaml', 'shared'])
    cpSync(join(DEMO, name), join(folder, name), { recursive: true });
  const paper = 'stock:\n  measured: { name: Measured cardstock, sheet: 12 x 12, weight: 80 lb cover }\n';
  writeFileSync(join(folder, 'shared', 'measured.yaml'), paper);
  const demo = readdirSync(DEMO, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'shared')
    .map(({ name }) => name)
    .slice(0, Math.floor(count / 4));
  for (const name of demo) cpSync(join(DEMO, name), join(folder, name), { recursive: true });
  const photo = readFileSync(join(DEMO, 'seed-packet-keeper', 'photos', 'finished.jpg'));
  for (let index = 0; index < count - demo.length; index += 1) {
    const own = join(folder, `project-${String(index).padStart(4, '0')}`);
    const hasPhoto = index % PHOTO_EVERY === 0;
    mkdirSync(join(own, 'photos'), { recursive: true });
    writeFileSync(join(own, 'sheet.md'), sheetText(index, random, hasPhoto));
    const tint = { brightness: 0.8 + random() * 0.4, hue: Math.floor(random() * 360) };
    if (hasPhoto)
      await sharp(photo)
        .modulate(tint)
        .jpeg()
        .toFile(join(own, 'photos', 'finished.jpg'));
  }
}
