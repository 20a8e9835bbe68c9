import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Length } from '../../src/measure/length.ts';
import { roundDown } from '../../src/measure/round.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { fillsItsBox } from '../../src/shape/ground.ts';
import { boxSize, type Panel } from '../../src/shape/net.ts';
import { sheetsOf } from '../../src/shape/sheets.ts';
import { runs } from '../runs.ts';
import { anySettings } from '../shape/forms/any.ts';
import { inches } from '../shape/forms/building.ts';
import { sheetWith } from './sheet-with.ts';
import { workspaceOf } from './workspace.ts';

/** Boxes over all forms. */
const { seed: SEED, numRuns: RUNS } = runs(20, 104);

/** What is wrong with the pieces of a sheet as it is written, but for the paper that they are cut from. */
function saidOf(pieces: string): string[] {
  const workspace = workspaceOf(sheetWith({ pieces }));
  const [project] = workspace.projects;
  if (!project) throw new Error('no project');
  const found = mergeFindings(proofProject(workspace, project, buildShapes(project)));
  return found
    .filter(({ rule, severity }) => severity !== 'note' && rule !== 'piece-exceeds-sheet')
    .map(({ rule, message }) => `${rule}: ${message}`);
}

/**
 * A layer well within a panel: the more it is cut back, the narrower its corners may be cut. In the middle of what is no
 * rectangle it takes a quarter of it each way, which a triangle leaves room for too.
 */
function layerOn(panel: Panel): string[] {
  const { name, box } = panel;
  const { width, height } = boxSize(box);
  const layer = (length: Length): Length =>
    fillsItsBox(panel) ? length.minus(inches(1, 2)) : roundDown(length.times(1, 4), inches(1, 16));
  const [across, upright] = [layer(width), layer(height)];
  if (across.lessThan(inches(1, 4)) || upright.lessThan(inches(1, 4))) return [];
  const sides = [across, upright].map(
    (length) => `${length.in('in').numerator}/${length.in('in').denominator}`,
  );
  return [`on-${name}: { stock: cream, cut: ${sides.join(' x ')}, on: box.${name} }`];
}

// A right project stays clean: a layer on every panel that a form offers as a base, whatever its measurements. Not a
// tag's: how far its corners are clipped says how far in a layer has to be.
const FOLDED = forms.filter(({ name }) => name !== 'tag');

describe.each(FOLDED)('a layer on every panel of a $name', ({ name, panels }) => {
  it('is right', () => {
    const settings = anySettings()[name] ?? fc.constant({});
    let laid = 0;
    fc.assert(
      fc.property(settings, (written) => {
        const lines = Object.entries(written).map(([key, value]) => `${key}: ${value}`);
        const box = `box: { stock: cream, form: ${name}, ${lines.join(', ')} }`;
        const [project] = workspaceOf(sheetWith({ pieces: box })).projects;
        const nets = project ? buildShapes(project).nets : new Map();
        const bases = sheetsOf(nets, 'box').flatMap(({ net }) => net.panels);
        const layers = bases.filter((panel) => panels.includes(panel.name ?? '')).flatMap(layerOn);
        laid += layers.length;
        expect(saidOf([box, ...layers].join('\n'))).toEqual(saidOf(box));
      }),
      { seed: SEED, numRuns: Math.ceil(RUNS / FOLDED.length) },
    );
    expect(laid).toBeGreaterThan(0);
  });
});
