import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { type TurnModel, turnModel } from '../../../src/drawing/turn-model.ts';
import type { Edition } from '../../../src/edition/editions.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { foldNet, layDown } from '../../../src/shape/fold.ts';
import { foldSteps } from '../../../src/shape/fold-order.ts';
import type { FoldedShape } from '../../../src/shape/folded-shape.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import type { foldPaper, PaperSheet, sharesAfter } from '../../../src/shape/paint/paper-sheet.ts';
import type { paint } from '../../../src/shape/paint/picture.ts';
import { sheetsOf } from '../../../src/shape/sheets.ts';
import { KEEPER, OPEN_TRAY, projectOf, sheetOf, TRADE_FACT } from '../../shape/boxes.ts';
import { progressAt } from '../../shape/progress.ts';

export type Triple = readonly [number, number, number];
export type Pair = readonly [number, number];

/** What the page's script for paper offers: the very functions that drawings are made with. */
export type PagePaper = {
  readonly foldPaper: typeof foldPaper;
  readonly paint: typeof paint;
  readonly sharesAfter: typeof sharesAfter;
};

/** The very script a page gets, run outside a browser: it asks for nothing that only a browser has. */
export function pagePaper(): PagePaper {
  const context = createContext({});
  const path = new URL('../../../templates/paper.js', import.meta.url);
  runInContext(readFileSync(path, 'utf8'), context);
  return runInContext('sheetwright.paper', context) as PagePaper;
}

export function editionOf(box: string, more = '', stock = ''): Edition {
  const sheet = sheetOf(box, more).replace('80 lb cover', `80 lb cover${stock && `, ${stock}`}`);
  const project = projectOf(sheet);
  return { project, shapes: buildShapes(project) };
}

export function modelOf(edition: Edition): TurnModel {
  const model = turnModel(edition, 'box');
  if (!model) throw new Error('nothing of the box is folded');
  return model;
}

/** The edition of a form's own example, as `box`. */
export function exampleOf(name: string): Edition {
  const settings = forms.find((form) => form.name === name)?.example.settings ?? [];
  return editionOf(`\n  form: ${name}${settings.map((line) => `\n  ${line}`).join('')}`);
}

/** Every shape we know that is folded: three by their score lines, and every form's own example. */
export const SHAPES: readonly (readonly [string, Edition])[] = [
  ['keeper', editionOf(KEEPER)],
  ['trade-fact box', editionOf(TRADE_FACT)],
  ['open tray', editionOf(OPEN_TRAY)],
  ...forms
    .map(({ name }) => [name, exampleOf(name)] as const)
    .filter(([, edition]) => turnModel(edition, 'box') !== undefined),
];

/** One sheet of a model, the proof's own folding of it, and its panels' ids in the model's order. */
export type Twofold = {
  readonly sheet: PaperSheet;
  readonly ids: readonly string[];
  /** From the first of its steps to the last. */
  readonly steps: readonly [number, number];
  readonly folded: (done: number) => FoldedShape;
};

export function twofolds(edition: Edition): readonly Twofold[] {
  const { sheets } = modelOf(edition);
  let first = 0;
  return sheetsOf(edition.shapes.nets, 'box').map(({ net }, index) => {
    const sheet = sheets[index];
    if (!sheet) throw new Error('the model lacks a sheet');
    const [start, count] = [first, foldSteps(net).length];
    first += count;
    const caliper = (sheet.near - 0.5) / 2;
    const folded = (done: number): FoldedShape =>
      foldNet(net, { at: count === 0 ? 0 : progressAt(net, (done - start) / count), caliper });
    const ids = layDown(net).hung.map(({ panel }) => panel.id);
    return { sheet, ids, steps: [start, start + count], folded };
  });
}
