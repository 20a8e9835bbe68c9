import { expect, it } from 'vitest';
import { foldNet } from '../../../src/shape/fold.ts';
import { foldedByThree, greatestDifference } from '../three-fold.ts';
import { netsOf } from './building.ts';

const [net] = netsOf('gable box', { settings: { inside: '5 x 3 x 4', roof: '2 1/2' } });

/**
 * By hand, a roof of 2 1/2 in over half a depth of 1 1/2 in is a 3-4-5 triangle: it rises 2 in and leans by
 * arcsin 3/5. With the eaves' corner at the origin, the apex of the gable is at (3/2, 3/2, 2), and the planes of gable
 * and roof have the normals (2, 0, −3/2) and (0, 2, −3/2) between them: cos = 9/25.
 */
it('leans its roof and turns its gussets as a 3-4-5 triangle says', () => {
  const angleOf = (...panels: string[]): number | undefined =>
    net.folds.find((fold) => panels.every((panel) => fold.panels.includes(panel)))?.angle;
  const lean = angleOf('front', 'front-roof');
  const gusset = angleOf('right-gable', 'right-front-gusset');
  expect(angleOf('right', 'right-gable')).toBe(lean);
  expect(lean).toBeCloseTo((Math.asin(3 / 5) * 180) / Math.PI, 10);
  expect(gusset).toBeCloseTo(180 - (Math.acos(9 / 25) * 180) / Math.PI, 10);
});

it('stands as three.js folds it, its gables’ apexes on the ridge', () => {
  const shape = foldNet(net, { base: 'front' });
  expect(greatestDifference(shape, foldedByThree(net, 'front'))).toBeLessThan(1e-9);
  const apex = shape.panels.get('right-gable');
  const handle = net.folds.find(({ panels }) => panels.includes('front-handle'));
  if (!apex || !handle) throw new Error('no gable, no ridge');
  const ridge = [handle.from, handle.to].map((end) => shape.panels.get('front-roof')?.place(end));
  const top = apex.corners.reduce((most, corner) => (corner.y > most.y ? corner : most));
  expect(ridge.map((end) => end?.y)).toEqual([expect.closeTo(top.y, 6), expect.closeTo(top.y, 6)]);
  expect(ridge.map((end) => end?.z)).toEqual([expect.closeTo(top.z, 6), expect.closeTo(top.z, 6)]);
  // Half a depth in from the end of the ridge.
  expect(Math.max(...ridge.map((end) => end?.x ?? 0)) - top.x).toBeCloseTo(1.5 * 25.4, 6);
});
