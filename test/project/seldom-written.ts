/** A small workspace with the keys that no text of the guide has. It proofs clean. */
export const SELDOM_WRITTEN: Readonly<Record<string, string>> = {
  'site.yaml': `title: Paper bench
summary: Papercraft to make together
units: both
font: fonts/my-font.ttf
editor: "myeditor://open?file={file}&line={line}&column={column}"
pricing: { rate: 24, hours: 3 1/2, room: 40, postage: 4.85, margin: 20 % }
links: [{ name: About us, link: "https://example.org/" }]
sessions: { every: month, on: second thursday, at: "18:30", people: 12, from: 2026-12-10 }
`,
  'shared/cupboard.yaml': `unit: in
stock: { moss: { name: Moss cardstock, sheet: Letter } }
supplies: { tape: { item: Double-sided tape, kind: adhesive } }
pieces: { strip: { stock: shared.moss, cut: 1 x 4 } }
`,
  'card/sheet.md': `---
title: Card
session: 2026-12-10
level: beginner
tags: [card, layers]
occasion: thank you
video: https://example.org/card
lang: en
place: Reading room, 12 Harbour Street
host: The paper bench team
contact: bench@example.org
links: [{ name: How to fold, link: "https://example.org/fold" }]
terms: Free for classes and for your own use
was: [old-name]
units: both
measurements:
  unit: in
  metric: half
  stock:
    moss: { use: shared.moss, from: Meadow set, on hand: 4 }
    cream: { sheets: [8 1/2 x 11, 12 x 12] }
    fern: { sheet: 12 x 12, metric sheet: 300 x 300 mm }
    bark: { sheet: 305 x 305 mm, inch sheet: 12 x 12 in, caliper: 0.3 mm, grain: height }
  pieces:
    card:
      stock: moss
      form: single-fold card
      size: 4 1/4 x 5 1/2
      openings:
        step: { pop-up: 1, depth: 1, across: back|front }
    gate: { stock: fern, cut: 3 x 2, corners: { bottom: 1/4 } }
    flag: { stock: fern, cut: 3 x 2, corners: { left: 1/4 } }
    tab: { stock: fern, cut: 3 x 2, corners: { top right: 1/4, bottom right: 1/8, bottom left: 1/2 } }
    star: { stock: bark, cut: 1 x 1, on: inside card.back, at: { top: 1/4 }, turn: 45 }
    left-gate: { stock: cream, cut: 2 x 3, shape: arch, rise: 3/4, name: left door }
    banner: { stock: cream, cut: 2 x 3, shape: banner, notch: 3/8 }
    seal: { stock: cream, cut: 2 x 2, shape: scalloped circle, scallops: 12 }
    leaf: { stock: cream, drawn: shapes/leaf.svg, on: folder.front, at: { right: 3/8, bottom: 1/2 } }
    frames:
      stock: cream
      cut: 8 x 10
      openings:
        arch: { size: 1 x 2, shape: arch, rise: 1/4, at: { left: 1/2, top: 1/2 } }
        banner: { size: 1 x 2, shape: banner, notch: 1/4, at: { left: 2, top: 1/2 } }
        polygon: { size: 2 x 2, shape: polygon, sides: 8, at: { left: 3 1/2, top: 1/2 } }
        scallops: { size: 2 x 2, shape: scalloped circle, scallops: 16, at: { left: 1/2, top: 3 } }
        tag: { size: 1 x 2, shape: tag, clip: 1/4, turn: 45, at: { left: 3, top: 3 } }
        rounded: { size: 1 x 1, corners: 1/8, at: { left: 1/2, top: 6 } }
        leaf: { drawn: shapes/leaf.svg, at: { left: 3, top: 6 } }
    mat:
      stock: cream
      cut: 4 x 5
      impressions: [{ stamp: leaf, size: 2 x 1, turn: 90 }]
    folder:
      stock: cream
      form: single-fold card
      size: 4 x 5
      edge: { along: top, pitch: 1/4, hole: 1/8, in: front, start: 3/16 }
      impressions: [{ stamp: leaf, size: 2 x 1, in: front }]
    border: { stock: cream, cut: 4 x 5, edge: { along: left, pitch: 1/4, hole: 1/8, depth: 3/8, through: yes } }
    strip: { use: shared.strip }
    wallet:
      stock: cream
      cut: 8 x 7
      score: [{ from: left, at: [4] }, { from: bottom, at: [1 1/2] }]
      slit: [A|B 2]
      folds: { A|B: mountain 90, 1|2: mountain 180 }
      glue: { A2: A1 }
      opens: [B2]
    pan:
      stock: cream
      cut: 7 x 6
      score: [{ from: left, at: [1] }, { from: top, at: [1] }, { from: corner A1, to: corner B2 }]
      panels: { back: B1, left: A2, floor: B2 }
      folds: { back|A1 right: mountain 180, A1 left|A1 right: valley 180 }
      glue: { A1 right: back }
    box: { stock: moss, form: tray, inside: 4 x 3 x 1 }
  holds: { item: cookie, size: 1 x 1 x 1/4, count: 6, in: box, food: yes, allergens: [wheat, milk] }
supplies:
  - { item: Leaf stamp, kind: stamp, until: 2027-03-31, on hand: 2 }
  - { item: Craft knife, kind: tool }
  - shared.tape
---
## Take all
Take :piece[card], :piece[gate], :piece[flag], :piece[tab], :piece[star], :piece[left-gate], :piece[banner], :piece[seal], :piece[leaf],
:piece[frames], :piece[mat],
:piece[folder], :piece[border], :piece[strip],
:piece[wallet], :piece[pan] and :piece[box].
`,
};
