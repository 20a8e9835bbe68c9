/** Right sheets, settings, shared files and ledgers, each with what the others have not. Invented for these tests. */

const HEAD = `---
title: Small thing
summary: A small thing to make together.
measurements:
  unit: in
  stock:
    moss: { name: Moss cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover, caliper: 0.012 in, grain: height, pack: 25, on hand: 3 }
    big: { name: Plain board, sheets: [12 x 18, 8 1/2 x 11], color: "#a9b99a" }
`;

/** A text that names every piece. */
const tailOf = (...pieces: readonly string[]): string => `---
A small thing.

## Cut it
Cut ${pieces.map((piece) => `:piece[${piece}]`).join(', ')}.
`;

/** A box by its score lines: that of the guide. */
export const NET: string = `${HEAD}  pieces:
    box:
      stock: big
      cut: 9 1/2 x 6 3/4
      score:
        - { from: left, at: [1, 4 1/2, 5 1/2, 9] }
        - { from: bottom, at: [1, 5 3/4, 6 1/4] }
      panels: { front: B3, back: D3, tab: E3 }
      trim: [A1, C1, E1, E2, E4]
      slit: [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
      taper: [A2, C2, A4, C4, tab]
      folds: { 1|2: valley 90 }
      glue: { tab: A3, A4: D4, C4: D4, B4: D4 }
    label: { stock: moss, cut: 2 x 3/4, on: box.front }
  holds: { item: seed packet, size: 3 x 4 x 1/16, count: 4, in: box, allergens: [wheat] }
${tailOf('box', 'label')}`;

/** Ready-made forms, one in another or round it. */
export const FORMS: string = `${HEAD}  pieces:
    card: { stock: moss, form: single-fold card, size: 4 1/4 x 5 1/2, fold: top }
    tray: { stock: moss, form: tray, inside: 3 x 2 x 1, tab: 1/2 }
    pot: { stock: big, form: polygon box, side: 1 3/4, height: 3, sides: 6 }
    sleeve: { stock: big, form: envelope, card: 4 1/4 x 5 1/2, holds: card }
    band: { stock: big, form: belly band, around: 4 1/4 x 1/16, height: 1 }
    strip: { stock: big, form: accordion card, size: 2 3/4 x 4 1/4, pages: 4 }
    spare: { stock: moss, cut: 1 x 1, count: 2, turn: 0 }
${tailOf('card', 'tray', 'pot', 'sleeve', 'band', 'strip', 'spare')}`;

/** Outlines, openings, a punched edge and stamped images. */
export const SHAPES: string = `${HEAD}  pieces:
    card:
      stock: big
      form: single-fold card
      size: 5 1/2 x 4 1/4
      openings:
        porthole: { shape: circle, size: 2 x 2, in: front, at: { top: 1 } }
        step: { pop-up: 1, depth: 3/4 }
    mat: { stock: moss, cut: 4 x 3, edge: { along: bottom, pitch: 3/8, hole: 1/4 } }
    rosette: { stock: moss, cut: 2 x 2, shape: scalloped circle, scallops: 12 }
    ribbon: { stock: moss, cut: 3/4 x 3 1/2, shape: banner, notch: 3/8 }
    comb: { stock: moss, cut: 2 x 2, shape: polygon, sides: 6 }
    swing: { stock: moss, cut: 1 3/4 x 3 1/4, shape: tag, clip: 1/2 }
    gate: { stock: moss, cut: 1 3/4 x 2 1/2, shape: arch, rise: 1/2 }
    plate: { stock: moss, cut: 3 x 2, corners: { top left: 1/4, bottom: 1/8 } }
    field: { stock: moss, cut: 3 x 3, impressions: [{ stamp: wheat, ink: green, size: 1 x 2, at: { left: 1/4 } }] }
supplies:
  - { item: Wheat stamp, kind: stamp, share: 4 }
  - { item: Green ink, kind: ink, color: "#336633" }
  - { item: Craft knife, kind: tool }
${tailOf('card', 'mat', 'rosette', 'ribbon', 'comb', 'swing', 'gate', 'plate', 'field')}`;

/** Two sizes of one thing. */
export const VARIANTS: string = `${HEAD}  pieces:
    base: { stock: moss, cut: 4 x 5 }
    front: { stock: moss, cut: 3 x 4, on: base, at: { left: 1/2, top: 1/2 } }
  variants:
    small:
      base.cut: 3 x 4
      front.cut: 2 x 3
    large: {}
${tailOf('base', 'front')}`;

/** All that may be written in the text. */
export const PROSE: string = `${HEAD}  pieces:
    base: { stock: moss, cut: 4 x 5 }
    front: { stock: moss, cut: 3 x 4, on: base }
    leaf: { stock: moss, cut: 1 x 1, count: 5 }
supplies:
  - { item: Tape, kind: adhesive }
---
A small thing of :count[leaf] leaves. It is 4 x 5 in.

## Cut it :step{minutes=10 ahead uses="tape"}
Cut :piece[base], :piece[leaf] and :piece[front]; it is :size[front].

::drawing{of=front view=flat}

:::tip
Use a new blade.
:::

## Stick it :step{minutes=5 dry=10}
Stick :piece[front] on, leaving :reveal[front].
`;

export const SITE: string = `title: Bench
url: https://example.org/bench/
language: en
paper: [letter, a4]
units: both
currency: USD
bench: { board: 1/8 in, trimmer: 12 in, printer margin: 1/4 in }
sessions:
  every: 2 weeks
  on: thursday
  at: "18:30"
  zone: America/Chicago
  from: 2026-10-01
  people: 12
  except: [2026-12-24]
links:
  - { name: Our house, link: "https://example.org/" }
`;

export const SHARED: string = `unit: in
stock:
  cream: { name: Cream cardstock, sheet: 8 1/2 x 11, price: 0.35 }
supplies:
  folder: { item: Bone folder, kind: tool, share: 2 }
pieces:
  lid: { stock: shared.cream, form: tray, inside: 3 x 4 x 1, tab: 1/2 }
`;

/** What was published of a card twice. */
export const LEDGER: string = `revisions:
  - number: 1
    date: 2026-09-01
    own: inch
    changes: []
  - number: 2
    date: 2026-10-01
    changes:
      - piece: card
        what: size
        before: { inch: [4 in, 5 in] }
        after: { inch: [4 in, 6 in] }
state:
  pieces:
    - { piece: card, what: paper, word: Cream cardstock }
  steps: []
`;
