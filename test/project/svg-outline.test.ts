import { union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { readSvgOutline } from '../../src/project/drawn/svg-outline.ts';
import { sourceFile } from '../../src/project/source.ts';
import { readWorkspace } from '../../src/project/workspace.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { outlines } from '../../src/shape/outlines/index.ts';
import { sheetWith } from '../proof/sheet-with.ts';
import { blamed, findingsIn, findingsOf } from '../proof/workspace.ts';

const SIZE = 'width="60mm" height="60mm" viewBox="0 0 60 60"';
const SQUARE = '<path d="M0 0 H60 V60 H0 Z"/>';

function svgOf(inside: string, size = SIZE): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${inside}</svg>`;
}

/** All that is found of a sheet with a piece of this drawing, and what was blamed for it. */
function foundOf(svg: string): (string | undefined)[][] {
  const sheet = sheetWith({ pieces: 'leaf: { stock: cream, drawn: shapes/leaf.svg }' });
  return findingsOf(sheet, { 'card/shapes/leaf.svg': svg }).map((each) => [
    each.rule,
    blamed(each),
    each.message,
  ]);
}

const UNREADABLE = 'the path of "shapes/leaf.svg" cannot be read:';
const NO_SVG = '"shapes/leaf.svg" cannot be read as SVG:';
const RESERVED = `${NO_SVG} Invalid name: "__proto__" is a reserved JavaScript keyword that could cause prototype pollution`;
const NO_SIZE = 'how large "shapes/leaf.svg" is cannot be known:';
const NO_VIEWBOX = `${NO_SIZE} it has no viewBox of four numbers`;

describe('a drawing that is not to be trusted', () => {
  it.each([
    [
      'a line to infinity',
      svgOf('<path d="M1 1 L1e400 1 9 9z"/>'),
      `${UNREADABLE} a number in it is too large`,
    ],
    ['a point far off', svgOf('<path d="M1e300 1 L9 1 9 9z"/>'), `${UNREADABLE} a number in it is too large`],
    [
      'an endless arc',
      svgOf('<path d="M0 0A1e400 9 0 0 1 9 9z"/>'),
      `${UNREADABLE} a number in it is too large`,
    ],
    ['a foreign command', svgOf('<path d="M0 0 R9 0 9 9z"/>'), `${UNREADABLE} it has the command "R"`],
    // Second differences of 9 mm: √(6 × 9 / (8 × 0.03)) is 15 stretches a curve.
    [
      'curves by the thousand',
      svgOf(`<path d="M0 0 ${'c1 9 2 9 3 0 '.repeat(20_000)}z"/>`),
      'the path of "shapes/leaf.svg" takes 300000 straight cuts, and an outline takes no more than 2000',
    ],
    [
      'lines by the thousand',
      svgOf(`<path d="M0 0 ${'h1v1'.repeat(40_000)}z"/>`),
      'the path of "shapes/leaf.svg" takes 80000 straight cuts, and an outline takes no more than 2000',
    ],
    ['an endless viewBox', svgOf(SQUARE, SIZE.replace('60 60"', 'Infinity Infinity"')), NO_VIEWBOX],
    ['a viewBox in hexadecimal', svgOf(SQUARE, SIZE.replace('60 60"', '0x10 0x10"')), NO_VIEWBOX],
    ...['1e999 1e999', '1e-320 1e-320'].map((box) => [
      `a viewBox of ${box}`,
      svgOf(SQUARE, SIZE.replace('60 60"', `${box}"`)),
      `${NO_SIZE} its viewBox, "0 0 ${box}", is too large or too small`,
    ]),
    [
      'an entity from a file',
      `<!DOCTYPE svg [<!ENTITY d SYSTEM "file:///etc/hosts">]>${svgOf('<path d="&d;"/>')}`,
      `${NO_SVG} External entities are not supported`,
    ],
    [
      'elements in elements',
      svgOf('<g>'.repeat(10_000) + '</g>'.repeat(10_000)),
      `${NO_SVG} Maximum nested tags exceeded`,
    ],
    [
      'a name as long as a page',
      svgOf(`<${'a'.repeat(500_000)}/>`),
      `"shapes/leaf.svg" has a <${'a'.repeat(139)}…>, and an outline is one path`,
    ],
    ['digits without end', svgOf(SQUARE, SIZE.replace('60 60"', `60 ${'6'.repeat(500_000)}x"`)), NO_VIEWBOX],
    ['an element __proto__', svgOf('<__proto__/>'), RESERVED],
    ['an attribute __proto__', svgOf('<path __proto__="a" d=""/>'), RESERVED],
  ])('is told of where it is named: %s', (_, svg = '', message = '') => {
    expect(foundOf(svg)).toEqual([['unreadable-outline', 'shapes/leaf.svg', message]]);
  });

  it('holds up no other project, even where we break on it', () => {
    const sheet = sheetWith({ pieces: 'leaf: { stock: cream, drawn: shapes/leaf.svg }' });
    const texts = { 'good/sheet.md': sheet, 'bad/sheet.md': sheet.replace('title: ', 'title: Bad ') };
    const workspace = readWorkspace({
      root: '/',
      files: new Map(Object.entries(texts).map(([path, text]) => [path, sourceFile(path, text)])),
      findings: [],
      findPicture: () => 'missing',
      readFont: () => ({ problem: 'missing' }),
      readDrawing: (folder) => {
        if (folder === 'bad') throw new Error('no such luck');
        return { text: svgOf(SQUARE) };
      },
      forms,
      outlines,
    });
    const found = findingsIn(workspace).map(({ rule, at }) => [rule, at.file.path, blamed({ at })]);
    expect(found).toEqual([['internal', 'bad/sheet.md', 'shapes/leaf.svg']]);
  });

  it('is taken with what alters nothing', () => {
    const style = 'style="display:inline; clip-path:none; fill:#fff; transform: none !important"';
    const hidden = '<g style="display:none"><circle r="9"/></g>';
    expect(foundOf(svgOf(`<style>.d:hover { fill: red }</style>${hidden}<g ${style}>${SQUARE}</g>`))).toEqual(
      [],
    );
    const long = `<style>${'/*'.repeat(200_000)}</style>${'<g/>'.repeat(100_000)}`;
    expect(foundOf(svgOf(long + SQUARE))).toEqual([]);
    // The pen set down and nothing drawn, and a Z too many.
    expect(foundOf(svgOf('<path d="M9 9 M0 0 H60 V60 H0 Z z M20 20"/>'))).toEqual([]);
  });
});

type Spot = readonly [number, number];

/** Numbers from 0 to 1 by a linear congruential generator (Numerical Recipes, 1992), the same in every run. */
function* randoms(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    yield state / 2 ** 32;
  }
}

/** Points round a middle, each farther round than the last: whatever their distances, no two sides of it cross. */
function star(random: () => number): Spot[] {
  const corners = 3 + Math.floor(random() * 12);
  return Array.from({ length: corners }, (_, index): Spot => {
    const angle = ((index + 0.9 * random()) / corners) * 2 * Math.PI;
    const far = 10 + 80 * random();
    return [100 + far * Math.cos(angle), 100 + far * Math.sin(angle)];
  });
}

/** The same with nodes along its sides, to so many decimals as drawing programs write. */
function withNodes(ring: readonly Spot[], random: () => number, decimals: number): Spot[] {
  return ring.flatMap(([x, y], index) => {
    const [right, down] = ring[(index + 1) % ring.length] ?? [x, y];
    const parts = 1 + Math.floor(random() * 6);
    return Array.from({ length: parts }, (_, part): Spot => {
      const at = (a: number, b: number): number => Number((a + ((b - a) * part) / parts).toFixed(decimals));
      return [at(x, right), at(y, down)];
    });
  });
}

function read(ring: readonly Spot[]): ReturnType<typeof readSvgOutline> {
  const path = `<path d="M${ring.map((spot) => spot.join(' ')).join('L')}Z"/>`;
  return readSvgOutline(svgOf(path, 'width="200mm" height="200mm" viewBox="0 0 200 200"'));
}

function areaOf(ring: readonly Spot[]): number {
  const twice = ring.reduce((sum, [x, y], index) => {
    const [right, down] = ring[(index + 1) % ring.length] ?? [x, y];
    return sum + x * down - right * y;
  }, 0);
  return Math.abs(twice / 2);
}

/** The area inside by polyclip-ts, a general-purpose library; a line that crosses itself goes round less or more. */
function unionArea(ring: readonly Spot[]): number {
  const found = union([ring.map(([x, y]): [number, number] => [x, y])]);
  const areas = found.map(([outer = [], ...holes]) =>
    holes.reduce((left, hole) => left - areaOf(hole), areaOf(outer)),
  );
  return areas.reduce((sum, each) => sum + each, 0);
}

describe('a line that goes round', () => {
  it('is taken where polyclip-ts finds it simple, with its area', () => {
    const source = randoms(1);
    const random = (): number => source.next().value;
    for (let turn = 0; turn < 300; turn += 1) {
      const ring = withNodes(star(random), random, 2 + (turn % 3));
      const outline = read(ring);
      expect(outline, JSON.stringify(ring)).toBeInstanceOf(Array);
      const points = 'kind' in outline ? [] : outline.map(({ x, y }): Spot => [x.mm, y.mm]);
      expect(areaOf(points)).toBeCloseTo(unionArea(ring), 1);
    }
  });

  it('is refused where polyclip-ts finds that it crosses itself', () => {
    const source = randoms(2);
    const random = (): number => source.next().value;
    for (let refused = 0; refused < 100; ) {
      const ring = withNodes(
        star(random).toSorted(() => random() - 0.5),
        random,
        2,
      );
      if (Math.abs(unionArea(ring) - areaOf(ring)) < 0.1) continue;
      expect(read(ring), JSON.stringify(ring)).toMatchObject({ kind: 'crosses' });
      refused += 1;
    }
  });

  // Seen to be refused, and to end in a division by nothing.
  it.each([
    'M3.62 6.35L11.12 9.27L18.62 12.19L26.12 15.11L33.62 18.03L41.12 20.95L-16.38 20.95Z',
    'M4.11 16.73L9.57 23.17L15.03 29.61L20.49 36.05L0 42.49Z',
  ])('may have nodes on a slanted side: %s', (d) => {
    expect(foundOf(svgOf(`<path d="${d}"/>`))).toEqual([]);
  });
});
