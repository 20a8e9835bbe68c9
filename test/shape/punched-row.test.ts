import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import type { PunchedEdge } from '../../src/project/decoration.ts';
import { sourceFile, startOf } from '../../src/project/source.ts';
import type { PunchedRow } from '../../src/shape/net.ts';
import { endsOf, rowAlong } from '../../src/shape/punched-row.ts';

const at = startOf(sourceFile('edge/sheet.md', ''));

/** All numbers are 64ths of an inch. */
type Tool = {
  readonly pitch: number;
  readonly hole: number;
  readonly start?: number;
  readonly through?: boolean;
  readonly cut?: number;
};

function edgeWith({ pitch, hole, start, through = false }: Tool): PunchedEdge {
  const placed = (value: number) => ({ value: part(value), at });
  const begins = start === undefined ? {} : { start: placed(start) };
  return { along: ['left'], pitch: placed(pitch), hole: placed(hole), ...begins, through, at };
}

function rowOn(length: number, tool: Tool): PunchedRow {
  const cut = part(tool.cut ?? 0);
  return rowAlong({ side: 'left', length: part(length), cut, clear: cut }, edgeWith(tool));
}

function part(parts: number): Length {
  return Length.of(parts, 64, 'in');
}

function parts(length: Length): number {
  return Number(length.over(part(1)).numerator) / Number(length.over(part(1)).denominator);
}

/** Worked out by hand on paper: an edge of 3 1/2 in, motifs of 1/8 in every 1/4 in. */
describe('a row of motifs', () => {
  it.each([
    [
      '13 with one on the middle leave 3/16 in, 14 leave 1/16 in',
      224,
      { pitch: 16, hole: 8 },
      'hole',
      13,
      12,
    ],
    ['narrow ones leave a whole gap', 236, { pitch: 16, hole: 4 }, 'gap', 14, 12],
    ['one alone', 20, { pitch: 16, hole: 8 }, 'hole', 1, 6],
    ['a gap on the middle', 40, { pitch: 16, hole: 8 }, 'gap', 2, 8],
    ['between corners rounded by 1/4 in', 256, { pitch: 16, hole: 8, cut: 16 }, 'hole', 13, 28],
    ['a die that runs through', 224, { pitch: 16, hole: 8, through: true }, 'gap', 14, 4],
    ['a die that cuts a motif at both ends', 102, { pitch: 16, hole: 12, through: true }, 'hole', 7, -3],
  ] as const)('%s', (_, length, tool, middle, count, end) => {
    const row = rowOn(length, tool);
    expect([row.middle, row.count, ...row.ends.map(parts)]).toEqual([middle, count, end, end]);
    expect(endsOf(row)).toBe(end < 0 ? 'half' : 'whole');
  });

  it.each([
    ['unlike', 224, { pitch: 16, hole: 8, start: 8 }, 14, [8, 0]],
    ['alike', 224, { pitch: 16, hole: 8, start: 4 }, 14, [4, 4]],
    ['cut at its far end', 100, { pitch: 16, hole: 8, start: 0, through: true }, 7, [0, -4]],
    ['with a motif before the start', 100, { pitch: 16, hole: 8, start: 20, through: true }, 6, [4, 8]],
  ] as const)('from a start of the tool, %s', (_, length, tool, count, ends) => {
    const row = rowOn(length, tool);
    expect([row.count, ...row.ends.map(parts)]).toEqual([count, ...ends]);
    expect(row.middle).toBeUndefined();
  });

  it.each([
    ['a motif longer than the edge', 6, { pitch: 16, hole: 8 }],
    ['corners rounded to a half circle', 64, { pitch: 16, hole: 8, cut: 32 }],
    ['a start beyond the end', 64, { pitch: 16, hole: 8, start: 70 }],
  ])('has no room: %s', (_, length, tool) => {
    expect(rowOn(length, tool).count).toBe(0);
  });
});

/** The same, by laying motifs from every 128th of an inch in turn and looking at both ends. */
describe('the row that 200 random edges are given', () => {
  const random = mulberry(20_261_127);
  const between = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  const cases = Array.from({ length: 200 }, () => {
    const pitch = between(6, 64);
    const length = between(pitch, 800);
    return { length, pitch, hole: between(2, pitch - 2), through: random() < 0.4 };
  });

  it.each(cases)('$length long, a motif of $hole every $pitch, through: $through', (each) => {
    const row = rowOn(each.length, each);
    const all = [...symmetrical(each)];
    expect(all.length).toBeGreaterThan(0);
    const best = all.reduce((one, other) => (rank(other, each) > rank(one, each) ? other : one));
    expect([row.count, ...row.ends.map(parts)]).toEqual([best.count, best.end, best.end]);
    expect(endsOf(row)).toBe(best.end < 0 ? 'half' : 'whole');
  });
});

type Laid = { readonly count: number; readonly end: number };
type Case = {
  readonly length: number;
  readonly pitch: number;
  readonly hole: number;
  readonly through: boolean;
};

/** Every row that reads the same from both ends, and is pushed along by less than a pitch. */
function* symmetrical({ length, pitch, hole, through }: Case): Generator<Laid> {
  for (let first = through ? -hole + 0.5 : 0; first <= pitch - (through ? hole : 0.5); first += 0.5) {
    const holes: number[] = [];
    const stops = (from: number): boolean => (through ? from >= length : from + hole > length);
    for (let from = first; !stops(from); from += pitch) holes.push(from);
    const last = holes.at(-1);
    if (last === undefined) continue;
    const [start, end] = [first, length - last - hole];
    if (start === end) yield { count: holes.length, end };
  }
}

/** Whole before cut; most like a gap, rather more paper than less; most like half a motif. */
function rank({ end }: Laid, { pitch, hole }: Case): number {
  if (end < 0) return -1000 - Math.abs(-end - hole / 2);
  return -Math.abs(end - (pitch - hole)) + end / 10_000;
}

/** A small generator of random numbers with a seed, so that a failure comes back. */
function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
