import { describe, expect, it } from 'vitest';
import { buildShapes } from '../../src/shape/build.ts';
import { collisions } from '../../src/shape/closure/collisions.ts';
import { glueFits } from '../../src/shape/closure/glue.ts';
import { foldNet } from '../../src/shape/fold.ts';
import { bounds } from '../../src/shape/space.ts';
import { blamed, findingsOf } from '../proof/workspace.ts';
import { KEEPER, netOf, projectOf, shapesOf, sheetOf } from './boxes.ts';
import { CARDSTOCK } from './forms/building.ts';

const problemsOf = (box: string): string[] =>
  findingsOf(sheetOf(box))
    .filter(({ severity }) => severity === 'error')
    .map((finding) => `${finding.rule} at "${blamed(finding)}": ${finding.message} — ${finding.remedy}`);

describe('a form', () => {
  it('becomes the piece’s net', () => {
    const { nets, findings } = shapesOf(sheetOf('\n  form: clip-top box\n  inside: 3 1/2 x 1 x 4 3/4'));
    expect(findings).toEqual([]);
    expect(nets.get('box')?.panels.map(({ id }) => id)).toContain('front');
  });

  it('that is not there is reported with the nearest', () => {
    expect(problemsOf('\n  form: clip top box\n  inside: 3 x 1 x 4')).toEqual([
      'unknown-reference at "clip top box": there is no form "clip top box" — write "clip-top box"',
    ]);
  });

  it('takes no setting it does not know', () => {
    expect(problemsOf('\n  form: tray\n  inside: 3 x 2 x 1\n  tap: 1/2')).toEqual([
      'unknown-key at "tap": "tap" means nothing in box — write "tab"',
    ]);
  });

  it('suggests the keys of every piece too', () => {
    expect(problemsOf('\n  form: envelope\n  card: 6 x 4\n  cornes: 1/8')).toEqual([
      'unknown-key at "cornes": "cornes" means nothing in box — write "corners"',
    ]);
  });

  it('is asked for one of its choices', () => {
    const [problem] = problemsOf('\n  form: tuck-end box\n  inside: 3 x 1 x 4\n  ends: straigt');
    expect(problem).toMatch(/^unexpected-value at "straigt": .* — write straight or reverse$/u);
  });

  it('misses what it cannot do without', () => {
    expect(problemsOf('\n  form: belly band').every((problem) => problem.startsWith('missing-value'))).toBe(
      true,
    );
  });
});

describe('the work', () => {
  const median = (times: number, work: () => void): number => {
    const taken = Array.from({ length: times }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    });
    return taken.toSorted((a, b) => a - b)[Math.floor(times / 2)] ?? 0;
  };

  it('takes less than 20 ms a project to build, and 50 ms a box to fold and check', () => {
    const project = projectOf(sheetOf(KEEPER, 'mat: { stock: moss, cut: 3 x 4, on: box.front }'));
    expect(median(21, () => buildShapes(project))).toBeLessThan(20);
    const net = netOf(KEEPER);
    const check = (): void => {
      const shape = foldNet(net);
      glueFits(shape, CARDSTOCK);
      collisions(shape, 0.6);
    };
    expect(median(21, check)).toBeLessThan(50);
  });
});

describe('bounds', () => {
  it('are the least box round some points', () => {
    const { least, most } = bounds([
      { x: 1, y: -2, z: 3 },
      { x: -1, y: 5, z: 0 },
    ]);
    expect([least, most]).toEqual([
      { x: -1, y: -2, z: 0 },
      { x: 1, y: 5, z: 3 },
    ]);
  });
});
