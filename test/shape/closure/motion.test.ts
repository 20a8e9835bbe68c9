import { describe, expect, it } from 'vitest';
import { loosePanels } from '../../../src/shape/closure/motion.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import { KEEPER, netOf, OPEN_TRAY } from '../boxes.ts';

const loose = (box: string): string[] => [...loosePanels(foldNet(netOf(box)))];

/**
 * How far linkages of hinges move is in any textbook on mechanisms: a chain moves at each hinge; three bodies whose three
 * hinges meet in a point or run alike are rigid; four are not (the spherical and the planar four-bar, one freedom each).
 */
describe('what can still move of a folded shape', () => {
  it('is everything but the base of a chain', () => {
    expect(loose('\n  cut: 9 x 3\n  score: [{ from: left, at: [3, 6] }]')).toEqual(['A1', 'C1']);
  });

  it('is no wall of a corner whose third edge is closed', () => {
    // A floor with two walls, one of which has a tab on the other; and the same without its glue.
    const corner = (glue: string): string =>
      `\n  cut: 6 x 6\n  score: [{ from: left, at: [2] }, { from: top, at: [2] }]\n  slit: [A|B 1]\n  panels: { floor: B2 }${glue}`;
    expect(loose(corner('\n  glue: { A1: B1 }'))).toEqual([]);
    expect(loose(corner('')).toSorted()).toEqual(['A1', 'A2', 'B1']);
  });

  it('is nothing of three walls that come round', () => {
    const folds = 'A|B: mountain 120, B|C: mountain 120, C|D: mountain 120';
    const row = '\n  cut: 6 1/2 x 3\n  score: [{ from: left, at: [2, 4, 6] }]';
    expect(loose(`${row}\n  folds: { ${folds} }\n  glue: { D1: A1 }`)).toEqual([]);
  });

  it('is nothing of a box that is glued, but for the flaps of the end that opens', () => {
    expect(loose(KEEPER).toSorted()).toEqual(['A2', 'B1', 'B2', 'C2', 'D1', 'D2']);
  });

  it('is nothing of the walls of a box held by two floor flaps, though its seam is open', () => {
    // Front and back on a floor, the side between them: four hinges, two upright and two across, of no one plane or point.
    const held = KEEPER.replace(/glue:.*/u, 'glue: { B4: D4 }');
    const below = loose(held).filter((panel) => !/[12]$/u.test(panel));
    expect(below.toSorted()).toEqual(['A3', 'A4', 'C4', 'tab']);
  });

  it('is nothing of a tray that is glued at its corners, and whatever hangs on one that is not', () => {
    expect(loose(OPEN_TRAY)).toEqual([]);
    expect(loose(OPEN_TRAY.replace(', C3: front', ''))).toEqual(['C3']);
    expect(loose(OPEN_TRAY.replace('A3: front, C3: front', 'A3: front')).toSorted()).toEqual(['C3']);
    expect(loose(OPEN_TRAY.replace(/glue:.*/u, ''))).toHaveLength(8);
  });
});
