import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { mergeFindings } from '../../../src/proof/tell.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import type { FlatPoint, Net } from '../../../src/shape/net.ts';
import { runs } from '../../runs.ts';
import { anySettings, anythingFor } from './any.ts';
import { areaOf, build, exact, inches, netsOf, numbersOf } from './building.ts';

const key = ({ x, y }: FlatPoint): string => `${x},${y}`;

/**
 * Euler's formula for a sheet of paper that hangs together without a hole: corners − edges + panels = 1. Panels share
 * corners and edges only along their folds; on either side of a slit each has its own.
 */
function eulerNumber(net: Net): number {
  const parent = new Map<string, string>();
  const find = (id: string): string => {
    const up = parent.get(id) ?? id;
    return up === id ? id : find(up);
  };
  const corner = (panel: string, point: FlatPoint): string => `${panel}@${key(point)}`;
  for (const { id, outline } of net.panels)
    for (const point of outline) parent.set(corner(id, point), corner(id, point));
  for (const {
    panels: [first, second],
    from,
    to,
  } of net.folds) {
    for (const point of [from, to]) parent.set(find(corner(first, point)), find(corner(second, point)));
  }
  const corners = new Set([...parent.keys()].map(find)).size;
  const edges = net.panels.reduce((sum, { outline }) => sum + outline.length, 0) - net.folds.length;
  return corners - edges + net.panels.length;
}

/** Folds that are no whole edge of both their panels. */
function looseFolds(net: Net): string[] {
  const hasEdge = (panel: string, from: FlatPoint, to: FlatPoint): boolean => {
    const outline = net.panels.find(({ id }) => id === panel)?.outline ?? [];
    return outline.some((point, index) => {
      const ends = [key(point), key(outline[(index + 1) % outline.length] ?? point)];
      return ends.includes(key(from)) && ends.includes(key(to)) && key(from) !== key(to);
    });
  };
  return net.folds
    .filter(({ panels, from, to }) => !panels.every((panel) => hasEdge(panel, from, to)))
    .map(({ panels }) => panels.join('|'));
}

function total(outlines: readonly (readonly FlatPoint[])[]): Fraction {
  return outlines.reduce((sum, outline) => sum.add(areaOf(outline)), new Fraction(0));
}

/** Edges that are longer or shorter once the net is folded. */
function strainedEdges(net: Net): string[] {
  return [...foldNet(net).panels.values()].flatMap(({ panel, corners }) =>
    corners.flatMap((corner, index) => {
      const next = (index + 1) % corners.length;
      const [a, b, other] = [panel.outline[index], panel.outline[next], corners[next]];
      if (!a || !b || !other) throw new Error('a corner is missing');
      const flat = Math.hypot(b.x.mm - a.x.mm, b.y.mm - a.y.mm);
      const folded = Math.hypot(other.x - corner.x, other.y - corner.y, other.z - corner.z);
      return Math.abs(folded - flat) < 5e-9 ? [] : [`${panel.id} ${index}: ${flat}, folded ${folded}`];
    }),
  );
}

describe.each(Object.entries(anySettings()))('any %s', (name, any) => {
  const nets = fc
    .sample(any, runs(20_261_127, 40))
    .flatMap((settings) => netsOf(name, { settings }).map((net) => ({ net, settings })));
  const breaking = (isKept: (net: Net) => boolean): unknown[] =>
    nets.filter(({ net }) => !isKept(net)).map(({ settings }) => settings);

  it('uses up its sheet: panels and waste are all of it, exactly', () => {
    const isUsedUp = ({ size, panels, waste }: Net): boolean =>
      total([...panels.map(({ outline }) => outline), ...waste]).equals(
        exact(size.width).mul(exact(size.height)),
      );
    expect(breaking(isUsedUp)).toEqual([]);
  });

  it('is one piece of paper without a hole', () => {
    expect(breaking((net) => eulerNumber(net) === 1)).toEqual([]);
  });

  it('folds along whole edges of its panels, in an order it tells', () => {
    expect(breaking((net) => looseFolds(net).length === 0)).toEqual([]);
    expect(breaking(({ folds }) => folds.every(({ stage = 0 }) => stage >= 1))).toEqual([]);
  });

  it('keeps every edge when folded', () => {
    expect(breaking((net) => strainedEdges(net).length === 0)).toEqual([]);
  });

  it('has every number on a ruler of thirty-seconds, if it was given in sixteenths', () => {
    const isOnRuler = (net: Net): boolean => numbersOf(net).every((each) => each.isMultipleOf(inches(1, 32)));
    expect(breaking(isOnRuler)).toEqual([]);
  });
});

describe.each(Object.entries(anySettings(2)))('a %s on the grooves of an eighth-inch board', (name, any) => {
  it('has every number on a ruler of sixteenths, and none finer than its halves', () => {
    fc.assert(
      fc.property(any, (settings) => {
        const nets = netsOf(name, { settings });
        const off = nets.flatMap(numbersOf).filter((length) => !length.isMultipleOf(inches(1, 16)));
        expect(off.map(String)).toEqual([]);
      }),
      runs(20_261_127, 25),
    );
  });
});

describe.each(Object.entries(anySettings(1)))('a %s in whole millimeters', (name, any) => {
  it('has every number on whole or half millimeters', () => {
    fc.assert(
      fc.property(any, (settings) => {
        const metric = Object.entries(settings).map(([setting, text]) => [setting, inMillimeters(text)]);
        const nets = netsOf(name, { settings: Object.fromEntries(metric), unit: 'mm' });
        const off = nets.flatMap(numbersOf).filter((length) => !length.isMultipleOf(Length.of(1, 2, 'mm')));
        expect(off.map(({ mm }) => mm)).toEqual([]);
      }),
      runs(20_261_127, 25),
    );
  });
});

/** As many millimeters as there are sixteenths; an eighth is two. */
function inMillimeters(text: string): string {
  return text.replace(/(\d+)\/16/gu, '$1').replace('1/8', '2');
}

describe('a tag whose round corners begin where its clip ends', () => {
  it('has no edge without a length', () => {
    const settings = { size: '131/16 x 68/16', clip: '34/16' };
    const [net] = netsOf('tag', { settings, unit: 'cm', corners: Length.of(22, 1, 'mm') });
    expect(eulerNumber(net)).toBe(1);
    expect(new Set(net.panels[0]?.outline.map(key)).size).toBe(net.panels[0]?.outline.length);
  });
});

describe.each(forms.map((form) => [form.name, form.parameters.map(({ key: each }) => each)] as const))(
  'whatever is written for a %s',
  (name, keys) => {
    it('gives sound sheets or problems with a place, never an exception', () => {
      fc.assert(
        fc.property(
          anythingFor(keys),
          fc.constantFrom('in', 'mm', 'cm'),
          fc.constantFrom(1, 5, 30),
          fc.option(fc.integer({ min: 1, max: 80 }), { nil: undefined }),
          (settings, unit, tenths, corner) => {
            const caliper = Length.of(tenths, 10, 'mm');
            const corners = corner === undefined ? {} : { corners: Length.of(corner, 1, 'mm') };
            const result = build(name, { settings, unit, caliper, ...corners });
            if (!result.ok) {
              expect(result.findings.length).toBeGreaterThan(0);
              for (const { message, remedy, at } of mergeFindings(result.findings)) {
                expect(message).not.toMatch(/NaN|undefined|\bnull\b/u);
                expect(remedy).toBeTruthy();
                expect(at.end).toBeGreaterThan(at.start);
              }
              return;
            }
            for (const net of [result.net, ...result.parts.map((part) => part.net)]) {
              expect(numbersOf(net).every(({ mm }) => Number.isFinite(mm) && mm >= 0)).toBe(true);
              expect(net.folds.every(({ angle }) => Number.isFinite(angle))).toBe(true);
              expect(eulerNumber(net)).toBe(1);
              const sheet = exact(net.size.width).mul(exact(net.size.height));
              const used = total([...net.panels.map(({ outline }) => outline), ...net.waste]);
              expect(used.equals(sheet)).toBe(true);
            }
          },
        ),
        runs(20_261_127, 60),
      );
    });
  },
);
