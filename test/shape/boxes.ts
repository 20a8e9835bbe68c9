import type { Project } from '../../src/project/model.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { buildShapes } from '../../src/shape/build.ts';
import type { Net } from '../../src/shape/net.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

/** The lines under `box:` of a clip-top box as a demonstrator would write it: 3 1/2 × 1 × 4 3/4 in. */
export const KEEPER = `
  cut: 9 1/2 x 6 3/4
  score:
    - { from: left,   at: [1, 4 1/2, 5 1/2, 9] }
    - { from: bottom, at: [1, 5 3/4, 6 1/4] }
  panels: { front: B3, back: D3, tab: E3 }
  trim:   [A1, C1, E1, E2, E4]
  slit:   [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
  taper:  [A2, C2, A4, C4, tab]
  folds:  { 1|2: valley 90 }
  glue:   { tab: A3, A4: D4, C4: D4, B4: D4 }`;

/**
 * The same kind of box, 2 1/2 × 1 1/4 × 4 1/4 in: a sheet 8 × 6 3/4 in scored from the left at 1 1/4, 3 3/4, 5 and
 * 7 1/2 and, after a quarter turn, at 1 1/4, 5 1/2 and 6 1/8. Common practice, no source.
 */
export const TRADE_FACT = `
  cut: 8 x 6 3/4
  score:
    - { from: left,   at: [1 1/4, 3 3/4, 5, 7 1/2] }
    - { from: bottom, at: [1 1/4, 5 1/2, 6 1/8] }
  panels: { front: B3, back: D3, tab: E3 }
  trim:   [A1, C1, E1, E2, E4]
  slit:   [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
  taper:  [A2, C2, A4, C4, tab]
  folds:  { 1|2: valley 90 }
  glue:   { tab: A3, A4: D4, C4: D4, B4: D4 }`;

/** A tray whose corners are folded in and not cut: each in two triangles, laid against the front and the back. */
export const FOLDED_CORNERS = `
  cut: 7 x 6
  score:
    - { from: left, at: [1, 6] }
    - { from: top, at: [1, 5] }
    - { from: corner A1, to: corner B2 }
    - { from: corner C1 top right, to: corner C2 }
    - { from: corner A3 bottom left, to: corner B3 }
    - { from: corner C3, to: corner C3 bottom right }
  panels: { back: B1, floor: B2, front: B3, left: A2, right: C2 }
  folds: { B1|A1 right: mountain 180, A1 left|A1 right: valley 180, B1|C1 left: mountain 180, C1 left|C1 right: valley 180,
    B3|A3 right: mountain 180, A3 left|A3 right: valley 180, B3|C3 left: mountain 180, C3 left|C3 right: valley 180 }
  glue: { A1 right: back, C1 left: back, A3 right: front, C3 left: front }`;

/** A tray by its score lines: walls all round, a tab at each end of the left and right wall. */
export const OPEN_TRAY = `
  cut: 8 x 6
  score:
    - { from: left, at: [1 1/2, 6 1/2] }
    - { from: top,  at: [1 1/2, 4 1/2] }
  panels: { base: B2, front: B3, back: B1 }
  slit:   [A|B 1, A|B 3, B|C 1, B|C 3]
  taper:  [A1, C1, A3, C3]
  glue:   { A1: back, C1: back, A3: front, C3: front }`;

/** A whole sheet of one box, with further pieces beneath it. */
export function sheetOf(box: string, more = ''): string {
  const indented = (text: string, by: string): string => text.replace(/^(?=.)/gmu, by);
  return `---
title: A box
measurements:
  unit: in
  stock:
    moss: { name: Moss cardstock, sheet: 12 x 12, weight: 80 lb cover }
  pieces:
    box:
      stock: moss${indented(box, '    ')}
${indented(more, '    ')}
---
## Fold it
Fold :piece[box].
`;
}

export function projectOf(sheet: string): Project {
  const workspace = readWorkspaceFromTexts({ 'box/sheet.md': sheet });
  const [project] = workspace.projects;
  if (!project) throw new Error('the workspace has no project');
  return project;
}

export function shapesOf(sheet: string): Shapes {
  return buildShapes(projectOf(sheet));
}

/** What is wrong with the shapes of a sheet, told. */
export function wrongIn(sheet: string): readonly Told[] {
  return mergeFindings(shapesOf(sheet).findings);
}

/** The net of `box` of a sheet. @throws Error with the problems when there is none. */
export function netOf(box: string): Net {
  const { nets, findings } = shapesOf(sheetOf(box));
  const net = ownNet(nets, 'box');
  if (!net)
    throw new Error(
      `no net: ${mergeFindings(findings)
        .map(({ message }) => message)
        .join('; ')}`,
    );
  return net;
}

/** The further places of a finding, each with the very characters. */
export function notesOf({ notes }: Told): string[] {
  return notes.map(({ message, at }) => `${message} at "${at.file.text.slice(at.start, at.end)}"`);
}
