import { FORMS, LEDGER, NET, PROSE, SHAPES, VARIANTS } from './bases.ts';
import { SLIPS as BY_PART, type Slip } from './slips.ts';

/**
 * Writes the corpus of bad and right sheets: `UPDATE=1 npx vitest run test/bad-input`. Every bad one is a right one with one
 * slip in it. Rule and place are what the slip is, written down here, never what the program said of it.
 */
export type Case = {
  /** Its path below this folder; `.yaml` for a settings or shared file, `.md` for a sheet. */
  readonly name: string;
  readonly sheet: string;
  /** `12:5 unknown-key`; nothing of a right one. */
  readonly expected: string;
};

type Base = {
  readonly name: string;
  readonly unit: string;
  readonly sheet: string;
  readonly piece: string;
  readonly layer: string;
};

const BASES: readonly Base[] = [
  { name: 'card', unit: 'in', sheet: '8 1/2 x 11', piece: 'cut: 4 1/4 x 5 1/2', layer: '4 x 5 1/4' },
  { name: 'metric', unit: 'mm', sheet: '210 x 297', piece: 'cut: 105 x 148', layer: '95 x 138' },
  { name: 'centimeters', unit: 'cm', sheet: '21 x 29.7', piece: 'cut: 10.5 x 14.8', layer: '9.5 x 13.8' },
  { name: 'square', unit: 'in', sheet: '12 x 12', piece: 'cut: 6 x 6', layer: '5 3/4 x 5 3/4' },
  {
    name: 'round',
    unit: 'in',
    sheet: '8 1/2 x 11',
    piece: 'cut: 5 x 5, corners: 1/4',
    layer: '4 1/2 x 4 1/2',
  },
  { name: 'tag', unit: 'in', sheet: '8 1/2 x 11', piece: 'cut: 2 1/2 x 4', layer: '2 1/4 x 3 3/4' },
  { name: 'banner', unit: 'mm', sheet: '305 x 305', piece: 'cut: 100 x 250', layer: '90 x 240' },
  { name: 'bookmark', unit: 'in', sheet: '8 1/2 x 11', piece: 'cut: 2 x 7', layer: '1 3/4 x 6 3/4' },
];

function sheetOf({ unit, sheet, piece, layer }: Base): string {
  return `---
title: Small thing
summary: A small thing of two layers.
session: 2026-12-10
level: beginner
minutes: 45
tags: [card, layers]
measurements:
  unit: ${unit}
  stock:
    moss: { name: Moss cardstock, sheet: ${sheet}, weight: 80 lb cover, price: 0.45 }
  pieces:
    base: { stock: moss, ${piece} }
    front: { stock: moss, cut: ${layer}, on: base }
supplies:
  - { item: Bone folder, kind: tool }
  - { item: Tape, kind: adhesive, each: 24 in, pack: 10 yd, link: "https://example.org/tape" }
---
A small thing.

## Cut both :step{minutes=10}
Cut :piece[base] and :piece[front].

## Stick the front on
Stick :piece[front] on :piece[base].
`;
}

/** Slips in what every sheet has. */
const SLIPS: readonly Slip[] = [
  ['title-misspelt', 'summary:', '«sumary»:', 'unknown-key'],
  ['piece-key-misspelt', 'on: base', '«om»: base', 'unknown-key'],
  ['stock-key-misspelt', 'weight:', '«wieght»:', 'unknown-key'],
  ['supply-key-misspelt', 'kind: tool', '«knid»: tool', 'unknown-key'],
  ['block-key-misspelt', '  stock:\n', '  «stok»:\n', 'unknown-key'],
  ['key-twice', 'level: beginner', 'level: beginner\n«level»: easy', 'repeated-key'],
  ['session-no-date', '2026-12-10', '«soon»', 'unexpected-value'],
  ['session-no-such-day', '2026-12-10', '«2026-02-30»', 'no-such-date'],
  ['session-month', '2026-12-10', '«2026-13-10»', 'no-such-date'],
  ['minutes-words', 'minutes: 45', 'minutes: «a while»', 'unexpected-value'],
  ['minutes-negative', 'minutes: 45', 'minutes: «-5»', 'unexpected-value'],
  ['unit-none', 'unit: ', 'unit: «furlong» # ', 'unexpected-value'],
  ['price-words', 'price: 0.45', 'price: «cheap»', 'unexpected-value'],
  ['price-fine', 'price: 0.45', 'price: «0.4567»', 'unexpected-value'],
  ['kind-none', 'kind: tool', 'kind: «gadget»', 'unexpected-value'],
  ['each-negative', 'each: 24 in', 'each: «-24 in»', 'unexpected-value'],
  ['pack-nothing', 'pack: 10 yd', 'pack: «0 yd»', 'unexpected-value'],
  ['link-script', '"https://example.org/tape"', '"«javascript:alert(1)»"', 'unsafe-content'],
  ['link-file', '"https://example.org/tape"', '"«file:///etc/passwd»"', 'unsafe-content'],
  ['base-unknown', 'on: base', 'on: «bace»', 'unknown-reference'],
  ['base-itself', 'on: base', 'on: «front»', 'circular-base'],
  ['stock-unknown', 'front: { stock: moss', 'front: { stock: «mos»', 'unknown-reference'],
  ['title-tag', 'title: Small thing', 'title: «!Small» thing', 'broken-yaml'],
  ['title-unseen', 'title: Small thing', 'title: "«Small\\u0000thing»"', 'unexpected-value'],
  ['title-escape', 'title: Small thing', 'title: "«Small\\u001b[31m thing»"', 'unexpected-value'],
  ['tags-merge', 'level: beginner', '«<<»: { level: beginner }', 'unexpected-value'],
  ['alias-nowhere', 'level: beginner', 'level: «*easy»', 'unexpected-value'],
  ['piece-in-prose', ':piece[front] on', ':piece[«frint»] on', 'unknown-reference'],
  ['reveal-in-prose', 'Stick :piece[front]', 'Stick :reveal[«frint»]', 'unknown-reference'],
  ['picture-missing', 'A small thing.\n', '![The thing](«photos/none.jpg»)\n', 'missing-picture'],
  ['picture-outside', 'A small thing.\n', '![The thing](«../../secret.jpg»)\n', 'outside-picture'],
  ['step-twice', 'Cut :piece[base] and', '«:step{minutes=5}» Cut :piece[base] and', 'unexpected-value'],
  ['step-minutes', '{minutes=10}', '{minutes=«soon»}', 'unexpected-value'],
  ['html-script', 'A small thing.\n', '«<script>alert(1)</script>»\n', 'unsafe-content'],
  ['head-key-misspelt', 'measurements:', '«measurement»:', 'unknown-key'],
  ['unit-key-misspelt', '  unit:', '  «unti»:', 'unknown-key'],
  ['item-key-misspelt', 'item: Bone', '«itme»: Bone', 'unknown-key'],
  ['cut-key-misspelt', 'moss, cut: ', 'moss, «cat»: ', 'unknown-key'],
  ['pieces-key-misspelt', '  pieces:', '  «peices»:', 'unknown-key'],
  ['unit-misspelt', 'each: 24 in', 'each: «24 inn»', 'unexpected-value'],
  ['unit-misspelt-in-german', 'pack: 10 yd', 'pack: «10 Milimeter»', 'unexpected-value'],
  ['unit-misspelt-in-french', 'each: 24 in', 'each: «24 poucces»', 'unexpected-value'],
  ['supplies-key-misspelt', 'supplies:', '«suplies»:', 'unknown-key'],
];

/** Ways a sheet may be written otherwise and stay right. */
const RIGHTS: readonly (readonly [name: string, from: string, to: string])[] = [
  ['as-it-is', 'A small thing.', 'A small thing.'],
  ['quoted-title', 'title: Small thing', 'title: "Small: thing"'],
  ['accents', 'Small thing', 'Ölpapier für Zoë'],
  ['windows-ends', 'A small thing.', 'A small thing.\r'],
  ['things', 'each: 24 in, pack: 10 yd', 'each: 2 cards, pack: 24 cards'],
  ['comment', 'level: beginner', 'level: beginner # for everybody'],
  ['anchor', 'stock: moss', 'stock: &paper moss'],
  ['tip', 'A small thing.\n', ':::tip\nUse a new blade.\n:::\n'],
];

/** Sheets of every part of the grammar. */
const SHEETS = { net: NET, forms: FORMS, shapes: SHAPES, variants: VARIANTS, prose: PROSE };

/** Each slip that any sheet may have is in two or three of the plain ones, and each part of the grammar has slips of its own. */
export function cases(): readonly Case[] {
  return [...plainCases(), ...rightSheets(), ...slipsByPart()];
}

function plainCases(): readonly Case[] {
  const rights = BASES.flatMap((base) =>
    RIGHTS.map(([name, from, to]) => ({
      name: `right/${base.name}-${name}.md`,
      sheet: replaced(sheetOf(base), from, to),
      expected: '',
    })),
  );
  const wrongs = SLIPS.flatMap(([name, from, to, rule], index) =>
    BASES.filter((_, place) => (index + place) % 3 === 0).map((base) =>
      slipped(`wrong/${base.name}-${name}.md`, replaced(sheetOf(base), from, to), rule),
    ),
  );
  return [...rights, ...wrongs];
}

function rightSheets(): readonly Case[] {
  const sheets = Object.entries(SHEETS).map(([name, sheet]) => [`right/${name}.md`, sheet] as const);
  const ledgers = [
    ['right/ledger.yaml', LEDGER],
    ['right/ledger-first.yaml', 'revisions: []\n'],
  ] as const;
  return [...sheets, ...ledgers].map(([name, sheet]) => ({ name, sheet, expected: '' }));
}

function slipsByPart(): readonly Case[] {
  return Object.entries(BY_PART).flatMap(([part, { base, file, slips }]) =>
    slips.map(([name, from, to, rule]) =>
      slipped(`wrong/${part}-${name}.${file ? 'yaml' : 'md'}`, replaced(base, from, to), rule),
    ),
  );
}

/** @throws when what is to be replaced is not there. */
function replaced(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`there is no ${from}`);
  return text.replace(from, () => to);
}

function slipped(name: string, marked: string, rule: string): Case {
  const [before = ''] = marked.split('«');
  const lines = before.split('\n');
  const place = `${lines.length}:${(lines.at(-1) ?? '').length + 1}`;
  return { name, sheet: marked.replace(/[«»]/gu, ''), expected: `${place} ${rule}` };
}
