import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { findingsOf } from './workspace.ts';

/** A tray whose corners fold in, by hand: each crease halves its corner, and the half that is stuck lies flat on its wall. */
const FLAT = ['A1 right|back', 'back|C1 left', 'A3 right|front', 'front|C3 left'];

const tray = (flat: readonly string[]): string =>
  sheetWith({
    pieces: `tray:
  stock: cream
  cut: 6 x 7
  score:
    - { from: left, at: [1, 5] }
    - { from: top, at: [1, 6] }
    - { from: corner A1, to: corner B2 }
    - { from: corner C1 top right, to: corner C1 bottom left }
    - { from: corner A3 bottom left, to: corner A3 top right }
    - { from: corner C3, to: corner C3 bottom right }
  panels: { back: B1, front: B3, left: A2, right: C2, floor: B2 }
  folds:
    A1 left|A1 right: valley 180
    C1 left|C1 right: valley 180
    A3 left|A3 right: valley 180
    C3 left|C3 right: valley 180
${flat.map((line) => `    ${line}: mountain 180\n`).join('')}\
  glue: { A1 right: back, C1 left: back, A3 right: front, C3 left: front }`,
  });

const remedyOf = (sheet: string): string | undefined => findingsOf(sheet)[0]?.remedy;

describe('a tray whose corners fold in', () => {
  it('proofs clean', () => {
    expect(findingsOf(tray(FLAT))).toEqual([]);
  });

  it.each(FLAT)('is told which line to fold flat, and not to cut: %s', (line) => {
    const rest = FLAT.filter((each) => each !== line);
    expect(remedyOf(tray(rest))).toBe(
      `say "${line}: mountain 180" under "folds:", so that the paper folds in around the corner`,
    );
  });

  it('is told of all four', () => {
    expect(findingsOf(tray([]))).toHaveLength(1);
    const [, said = ''] = /"(.+)" under/u.exec(remedyOf(tray([])) ?? '') ?? [];
    expect(said.split(', ').sort()).toEqual(FLAT.map((line) => `${line}: mountain 180`).sort());
  });
});
