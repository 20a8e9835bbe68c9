import { buildShapes } from '../shape/build.ts';
import type { Form } from '../shape/form.ts';
import { sheetsOf } from '../shape/shapes.ts';
import { readWorkspaceFromTexts } from '../shape/workspace.ts';

/** The title a slug suggests: `seed-packet-keeper` is `Seed packet keeper`. */
function titleOf(slug: string): string {
  const words = slug.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `clip-top box` is a `box`, `single-fold card` a `card`: what its piece is called. */
function pieceName(form: Form): string {
  return form.name.split(' ').at(-1) ?? form.name;
}

/** The text of a new project, commented for who has never written one; it proofs clean as it is. */
export function draftText(slug: string, form: Form | undefined): string {
  const body = form ? formBody(form) : cardBody();
  return `---
# Lines that begin with # are notes to you. Delete them when you know them.
title: ${titleOf(slug)}
summary: One sentence that says what it is and what it is for.
# The day it is made together, as year-month-day:
# session: 2026-12-10
level: beginner
minutes: 45
tags: []

measurements:
  # What a bare number means: in, mm or cm. Fractions are typed as at the ruler: 2 1/4
  unit: in

  # Each paper: its name, the sheet it is sold as, its weight and, if you like, its color.
  stock:
    base:  { name: White cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover }
    layer: { name: Cream cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover, color: "#f3ead6" }

  # Each piece of paper. "on" says what it is stuck on; it lies centered unless "at" says where.
  pieces:
${body.pieces}

# What is on the table. kind: tool, adhesive, ink, stamp, die, punch, embellishment, filling or other.
supplies:
  - { item: Paper trimmer, kind: tool, instead: scissors and a pencilled line }
  - { item: Score board, kind: tool, instead: a ruler and an empty ballpoint pen }
  - { item: Bone folder, kind: tool, instead: the back of a spoon }
  - { item: Double-sided tape, kind: adhesive, instead: a glue stick }
---
Two or three sentences: what it is, who it is for, what is nice about it.

${body.steps}`;
}

type DraftBody = { readonly pieces: string; readonly steps: string };

function cardBody(): DraftBody {
  return {
    pieces: `    card:  { stock: base, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 } }
    front: { stock: layer, cut: 4 x 5 1/4, on: card.front }`,
    steps: `## Score and fold the card :step{minutes=5}
Cut :piece[card] and score it: :scores[card] Fold it and work the fold with the bone folder.

## Add the layer :step{minutes=5}
Stick :piece[front] to the front, leaving :reveal[front] all round.

:::tip
A tip stands in a box like this one.
:::

:::host
This is for you alone: it is on no handout.
:::
`,
  };
}

function formBody(form: Form): DraftBody {
  const name = pieceName(form);
  const { settings, layer } = form.example;
  const cover = layer ? [`    panel: { stock: layer, cut: ${layer.cut}, on: ${name}.${layer.panel} }`] : [];
  const pieces = [`    ${name}: { stock: base, form: ${form.name}, ${settings.join(', ')} }`, ...cover].join(
    '\n',
  );
  const { scored, cut } = needsOf(pieces, name);
  const steps = scored ? scoredSteps(name, cut) : flatSteps(name, form);
  const last = layer
    ? `\n## Add the layer :step{minutes=5}\nStick :piece[panel] on, leaving :reveal[panel] all round.\n`
    : '';
  return { pieces, steps: `${steps}${last}` };
}

function scoredSteps(name: string, cut: boolean): string {
  const trims = cut ? `:trims[${name}]\n\n` : '';
  return `## Cut and score :step{minutes=10}
Cut :piece[${name}] and score it: :scores[${name}]

::drawing{of=${name} view=flat}

## ${cut ? 'Trim, fold and glue' : 'Fold'} :step{minutes=10}
${trims}:assembly[${name}]

::drawing{of=${name} view=folded}
`;
}

function flatSteps(name: string, { closing }: Form): string {
  return `## Cut :step{minutes=10}
Cut :piece[${name}]. ${closing}

::drawing{of=${name} view=flat}
`;
}

/** Whether a piece has anything to score (a tag has not) and, once scored, to cut (a card has not). */
function needsOf(pieces: string, name: string): { readonly scored: boolean; readonly cut: boolean } {
  const sheet = `---\ntitle: Trial\nmeasurements:\n  unit: in\n  pieces:\n${pieces}\n---\n`;
  const [trial] = readWorkspaceFromTexts({ 'trial/sheet.md': sheet }).projects;
  const nets = trial ? sheetsOf(buildShapes(trial).nets, name).map(({ net }) => net) : [];
  return {
    scored: nets.some(({ folds }) => folds.length > 0),
    cut: nets.some(({ waste, slits }) => waste.length + slits.length > 0),
  };
}
