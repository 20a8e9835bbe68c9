import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import type { Project, Workspace } from '../../src/project/model.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { boxSize, type Net } from '../../src/shape/net.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { everyNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { asScored } from '../edition/as-scored.ts';
import { runs } from '../runs.ts';
import { anyWritten, type WrittenForm } from '../shape/forms/whole-range.ts';
import { foldFindings } from './fold-rules.ts';

/** Nets over all forms. */
const { seed: SEED, numRuns: RUNS } = runs(20_261_127, 65);

/** Papers from text weight to heavy cardstock, in millimeters. */
const CALIPERS: readonly string[] = ['0.1', '0.2', '0.24', '0.3', '0.4'];

/** The least that holds. Common practice, no source. */
const LEAST_GLUE: Length = Length.of(1, 4, 'in');

/** Free corners as they are cut, mostly, or rounded by this. */
const RADIUS: Length = Length.of(1, 8, 'in');
const CORNERS: readonly string[] = ['', '', '', 'corners: 1/8 in'];

type Piece = WrittenForm & { readonly caliper: string; readonly corners: string };
type Built = { readonly workspace: Workspace; readonly project: Project; readonly shapes: Shapes };

function sheetOf({ unit, lines, caliper, corners }: Piece): string {
  const piece = [...lines, corners].map((line) => `\n      ${line}`).join('');
  return `---\ntitle: Random\nmeasurements:\n  unit: ${unit}\n  stock: { card: { sheet: 36 in x 36 in, caliper: ${caliper} mm } }\n  pieces:\n    box:\n      stock: card${piece}\n---\n## Make it\nFold :piece[box].\n`;
}

function build(sheet: string): Built {
  const workspace = readWorkspaceFromTexts({ 'random/sheet.md': sheet });
  const [project] = workspace.projects;
  if (!project) throw new Error('no project');
  return { workspace, project, shapes: buildShapes(project) };
}

/** Whether all that was written is a net that can be made: no form refused it, and there is paper enough to glue. */
function isRight({ project, shapes }: Built, { corners }: Piece): boolean {
  const isMade = project.findings.length === 0 && shapes.findings.length === 0;
  // Rounding takes a corner of what a tab is stuck to, and so of the glue.
  const least = corners === '' ? LEAST_GLUE : LEAST_GLUE.plus(RADIUS);
  return isMade && everyNet(shapes.nets).every((net) => hasRoomForGlue(net, least));
}

function hasRoomForGlue({ glue, panels }: Net, least: Length): boolean {
  const glued = panels.filter(({ id }) => glue.some(({ from, to }) => from === id || to === id));
  return glued.every(({ box }) => {
    const { width, height } = boxSize(box);
    return !Length.min(width, height).lessThan(least);
  });
}

/** What is found in a sheet, with the sheet itself where there is anything. */
function alarmsOf(sheet: string, { workspace, project, shapes }: Built): string[] {
  const found = foldFindings(workspace, project, shapes.nets);
  return found.map(({ rule, message }) => `${rule}: ${message}\n${sheet}`);
}

/** Pieces of one form that it does not refuse, so many of them. */
function rightPieces(form: (typeof forms)[number], count: number): readonly Piece[] {
  const any = fc.record({
    written: anyWritten(form),
    caliper: fc.constantFrom(...CALIPERS),
    corners: fc.constantFrom(...CORNERS),
  });
  const right: Piece[] = [];
  for (let round = 0; right.length < count && round < 100; round++) {
    const sample = fc.sample(any, { seed: SEED + round, numRuns: count });
    const pieces = sample.map(({ written, ...paper }) => ({ ...written, ...paper }));
    right.push(...pieces.filter((piece) => isRight(build(sheetOf(piece)), piece)));
  }
  return right.slice(0, count);
}

describe.each(forms.map((form) => [form.name, form] as const))('a right %s of any size', (_, form) => {
  const count = Math.ceil(RUNS / forms.length);
  const pieces = rightPieces(form, count);

  it('is made as often as asked', () => {
    expect(pieces.length).toBe(count);
  });

  it('folds without a finding', () => {
    const sheets = pieces.map(sheetOf);
    expect(sheets.flatMap((sheet) => alarmsOf(sheet, build(sheet)))).toEqual([]);
  });

  it('folds without a finding when it is given by its score lines', () => {
    const scored = pieces.flatMap((piece) =>
      everyNet(build(sheetOf(piece)).shapes.nets).flatMap((net) => {
        // A flap cut shorter than its row cannot be said by score lines.
        const lines = net.cuts?.shorten.length === 0 ? asScored(net)?.split('\n') : undefined;
        return lines ? [{ ...piece, lines }] : [];
      }),
    );
    const sheets = scored
      .map((piece) => ({ piece, sheet: sheetOf(piece) }))
      .map(({ piece, sheet }) => [piece, sheet, build(sheet)] as const)
      .filter(([piece, , built]) => isRight(built, piece));
    expect(sheets.length).toBeGreaterThanOrEqual(scored.length / 2);
    expect(sheets.flatMap(([, sheet, built]) => alarmsOf(sheet, built))).toEqual([]);
  });
});
