import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import { Length } from '../../src/measure/length.ts';
import { printInches } from '../../src/measure/print.ts';
import { roundHalfAway } from '../../src/measure/round.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { boxSize } from '../../src/shape/net.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { KEEPER, OPEN_TRAY, sheetOf, TRADE_FACT } from '../shape/boxes.ts';

function studyOf(sheet: string, files: Readonly<Record<string, string>> = {}): Study {
  const [study] = examine(readWorkspaceFromTexts({ ...files, 'box/sheet.md': sheet }));
  if (!study) throw new Error('no study');
  return study;
}

/** A sheet with these pieces; each is named in a step, so that none is unused. */
function pieces(lines: string): string {
  const indented = lines.trim().replace(/^/gmu, '    ');
  const named = [...lines.matchAll(/^(\w+):/gmu)].map(([, id]) => `:piece[${id}]`).join(' ');
  return `---\ntitle: Trial\nmeasurements:\n  unit: in\n  stock: { card: { sheet: 12 x 12, weight: 80 lb cover } }\n  pieces:\n${indented}\n---\n## Make it\nTake ${named}.\n`;
}

/** What was found of error or warning, and every word on the other edition. */
function troubles({ findings }: Study): string[] {
  const isTrouble = ({ severity, rule, message }: Told): boolean =>
    severity !== 'note' || rule === 'edition-strained' || / edition /u.test(message);
  return mergeFindings(findings)
    .filter(isTrouble)
    .map(({ message }) => message);
}

/** The gaps between neighboring edges of panels in millimeters, from the left and from the top. */
function gapsOf({ editions: { metric } }: Study, id = 'box'): { across: number[]; down: number[] } {
  const net = ownNet(metric.shapes.nets, id);
  if (!net) throw new Error('no net');
  const gaps = (edges: readonly number[]): number[] => {
    const rising = [...new Set(edges)].sort((a, b) => a - b);
    return rising.slice(1).map((edge, index) => edge - (rising[index] ?? 0));
  };
  const { panels, size } = net;
  return {
    across: gaps([0, size.width.mm, ...panels.flatMap(({ box }) => [box.left.mm, box.right.mm])]),
    down: gaps([0, size.height.mm, ...panels.flatMap(({ box }) => [box.top.mm, box.bottom.mm])]),
  };
}

describe('the metric edition of a box given by its score lines', () => {
  it('keeps front and back equal where rounding each position does not', () => {
    const positions = [20, 60, 80, 120].map((count) => Length.of(count, 16, 'in').in('mm'));
    const [a = 0, b = 0, c = 0, d = 0] = positions.map((each) => Number(roundHalfAway(each)));
    expect([b - a, d - c]).toEqual([63, 64]);

    const study = studyOf(sheetOf(TRADE_FACT, 'layer: { stock: moss, cut: 2 1/4 x 4, on: box.front }'));
    const { across } = gapsOf(study);
    expect(across[1]).toBe(across[3]);
    expect(across[0]).toBe(across[2]);
    const [layer] = study.editions.metric.shapes.layers;
    expect(Object.values(layer?.reveals ?? {}).map(({ mm }) => mm)).toEqual([3, 3, 3, 3]);
  });

  it('takes the nearest numbers that fold: two tops of 13 mm do not fit over a depth of 25', () => {
    const study = studyOf(sheetOf(KEEPER));
    expect(troubles(study)).toEqual([]);
    expect(gapsOf(study)).toEqual({ across: [26, 89, 26, 89, 13], down: [13, 13, 121, 26] });
  });

  it('rounds each equal panel to its own nearest: four of 2 3/4 in are four of 70 mm', () => {
    const folds = 'folds: { A|B: mountain 180, B|C: valley 180, C|D: mountain 180 }';
    const study = studyOf(
      pieces(
        `strip: { stock: card, cut: 11 x 2, score: [{ from: left, at: [2 3/4, 5 1/2, 8 1/4] }], ${folds} }`,
      ),
    );
    expect(gapsOf(study, 'strip').across).toEqual([70, 70, 70, 70]);
    expect(troubles(study)).toEqual([]);
  });

  it('is in half millimeters when the project asks for them, and then nearer', () => {
    const half = sheetOf(TRADE_FACT).replace('unit: in', 'unit: in\n  metric: half');
    expect(gapsOf(studyOf(half)).across).toEqual([32, 63.5, 32, 63.5, 12.5]);
  });

  it('keeps the walls of a tray as high as one another', () => {
    const { across, down } = gapsOf(studyOf(sheetOf(OPEN_TRAY)));
    expect([across[0], across[2], down[0], down[2]]).toEqual([38, 38, 38, 38]);
  });
});

describe('a form', () => {
  it('is cut the same way in both editions', () => {
    const study = studyOf(
      pieces('box: { stock: card, form: tuck-end box, inside: 2 3/16 x 1 1/16 x 3 1/4 }'),
    );
    const [inch, metric] = [study.editions.inch, study.editions.metric].map(
      ({ shapes }) => ownNet(shapes.nets, 'box')?.cuts?.shorten,
    );
    expect(inch).not.toEqual([]);
    expect(metric).toEqual(inch);
  });
});

describe('a tab of 1/4 in', () => {
  it.each([
    'form: tray, inside: 4 x 3 x 1, tab: 1/4',
    'form: slide box, inside: 4 x 3 x 1, tab: 1/4',
    'form: tuck-end box, inside: 3 x 2 x 4, tab: 1/4',
    'form: tuck-end box, inside: 3 x 2 x 4, tuck: 1/4',
    'form: envelope, card: 6 x 4, sides: 1/4',
  ])('is right in both editions: %s', (written) => {
    expect(troubles(studyOf(pieces(`box: { stock: card, ${written} }`)))).toEqual([]);
  });
});

describe('a base', () => {
  it('moves for no layer on it, whatever that measures', () => {
    const sixteenth = fc.integer({ min: 16, max: 36 });
    const alone = gapsOf(studyOf(sheetOf(KEEPER)));
    fc.assert(
      fc.property(sixteenth, sixteenth, fc.option(fc.integer({ min: 1, max: 12 })), (width, height, left) => {
        const cut = [width, height]
          .map((each) => printInches(Length.of(each, 16, 'in'), 'plain'))
          .join(' x ');
        const at = left === null ? '' : `, overhang: yes, at: { left: ${left}/16 }`;
        const layer = `front: { stock: moss, cut: ${cut}, on: box.front${at} }`;
        expect(gapsOf(studyOf(sheetOf(KEEPER, layer)))).toEqual(alone);
      }),
      { seed: 20_261_127, numRuns: 40 },
    );
  });

  it('of shared/ has the same numbers in every project', () => {
    const shared = {
      'shared/boxes.yaml': 'pieces: { box: { form: clip-top box, inside: 3 1/2 x 1 x 4 3/4 } }\n',
    };
    const layers = [
      '',
      'l: { stock: card, cut: 3 1/4 x 4 1/2, on: box.front }',
      'l: { stock: card, cut: 3 x 1, on: box.left, turn: 90 }',
    ];
    const gaps = layers.map((layer) =>
      JSON.stringify(gapsOf(studyOf(pieces(`box: { use: shared.box, stock: card }\n${layer}`), shared))),
    );
    expect(new Set(gaps).size).toBe(1);
  });

  it('of shared/ in millimeters keeps its unit in a sheet in inches', () => {
    const shared = {
      'shared/boxes.yaml': 'unit: mm\npieces: { box: { form: tray, inside: 80 x 60 x 20 } }\n',
    };
    const study = studyOf(
      pieces('box: { use: shared.box, stock: card }\nlid: { stock: card, cut: 4 x 3 }'),
      shared,
    );
    expect(mergeFindings(study.findings).filter(({ severity }) => severity === 'error')).toEqual([]);
    const widths = [study.editions.inch, study.editions.metric].map(({ shapes }) => {
      const floor = ownNet(shapes.nets, 'box')?.panels.find(({ id }) => id === 'floor');
      return `${floor && boxSize(floor.box).width}`;
    });
    // 80 mm as written; 3.15 in, on the ruler 3 1/8.
    expect(widths).toEqual(['25/8 in', `${Length.of(80, 1, 'mm')}`]);
  });
});

describe('a box measured with the other ruler', () => {
  const box = 'form: clip-top box, inside: 3 3/8 x 1 1/8 x 4 5/8, tab: 1/2';
  const shared = { 'shared/boxes.yaml': `pieces: { box: { ${box} } }\n` };
  const inInches = studyOf(pieces('box: { use: shared.box, stock: card }'), shared);
  const inMetric = studyOf(
    pieces('box: { use: shared.box, stock: card }')
      .replace('unit: in', 'unit: mm')
      .replace('12 x 12', '305 x 305'),
    shared,
  );

  it('has the same numbers in either unit, whichever the sheet is in', () => {
    expect(gapsOf(inMetric)).toEqual(gapsOf(inInches));
    expect(gapsOf(inMetric).across).toEqual([28, 86, 28, 86, 13]);
    const inches = [inInches, inMetric].map(({ editions }) =>
      ownNet(editions.inch.shapes.nets, 'box')?.scores.map(({ at }) => at.map(String)),
    );
    expect(inches[1]).toEqual(inches[0]);
    expect(troubles(inMetric)).toEqual([]);
  });
});

describe('a layer', () => {
  it('that is square and centered keeps its nearest number, and its border may lie between two marks', () => {
    const study = studyOf(
      pieces('card: { stock: card, cut: 6 x 5 }\nseal: { stock: card, cut: 3 1/4 x 3 1/4, on: card }'),
    );
    expect(troubles(study)).toEqual([]);
    const [seal] = study.editions.metric.shapes.layers;
    expect([seal?.size.width.mm, seal?.size.height.mm, seal?.reveals.left.mm]).toEqual([83, 83, 34.5]);
  });

  it('with an even border is cut as its base leaves it, and stays even', () => {
    const study = studyOf(
      pieces('mat: { stock: card, cut: 4 1/4 x 5 1/2 }\ntop: { stock: card, cut: 4 x 5 1/4, on: mat }'),
    );
    const [layer] = study.editions.metric.shapes.layers;
    // 4 1/4 × 5 1/2 in are 107.95 × 139.7 mm, the border of 1/8 in is 3.175 mm.
    expect([layer?.base.width.mm, layer?.base.height.mm]).toEqual([108, 140]);
    expect(Object.values(layer?.reveals ?? {}).map(({ mm }) => mm)).toEqual([3, 3, 3, 3]);
    expect(troubles(study)).toEqual([]);
  });

  it('that lines up with an edge or with another layer still does', () => {
    const study = studyOf(
      pieces(
        [
          'card: { stock: card, cut: 5 x 7 }',
          'west: { stock: card, cut: 2 x 7, on: card, at: { right: 3 } }',
          'east: { stock: card, cut: 1 1/4 x 3, on: card, at: { left: 2, top: 1/4 } }',
        ].join('\n'),
      ),
    );
    const [west, east] = study.editions.metric.shapes.layers;
    const { left, top, bottom } = west?.reveals ?? {};
    expect([left?.mm, top?.mm, bottom?.mm]).toEqual([0, 0, 0]);
    expect(east?.reveals.left.mm).toBe(west?.size.width.mm);
    expect(troubles(study)).toEqual([]);
  });

  it('that is a circle stays one', () => {
    const study = studyOf(
      pieces(
        'card: { stock: card, cut: 4 x 5 }\ndot: { stock: card, cut: 1 5/16 x 1 5/16, corners: 21/32, on: card }',
      ),
    );
    const dot = study.editions.metric.project.pieces.get('dot');
    const cut = dot?.body.kind === 'flat' ? dot.body.cut.width.value.mm : 0;
    expect((dot?.corners?.[0]?.radius.value.mm ?? 0) * 2).toBe(cut);
    expect(Math.abs(cut - 33.3375)).toBeLessThan(1.5);
  });

  it('with chosen corners has its own rounded, each to its nearest, and a round top stays one', () => {
    const study = studyOf(
      pieces(
        'door: { stock: card, cut: 2 5/16 x 3, corners: { top: 1 5/32 } }\nflag: { stock: card, cut: 3 x 2, corners: { left: 1/4, top right: 1/8 } }',
      ),
    );
    const { pieces: made } = study.editions.metric.project;
    const [door, flag] = [made.get('door'), made.get('flag')];
    const width = door?.body.kind === 'flat' ? door.body.cut.width.value.mm : 0;
    expect(door?.corners?.map(({ radius }) => radius.value.mm * 2)).toEqual([width]);
    expect(flag?.corners?.map(({ corners, radius }) => [corners, radius.value.mm])).toEqual([
      [['top left', 'bottom left'], 6],
      [['top right'], 3],
    ]);
  });

  it.each([1, 1.3125, 1.40625, 1.9375, 2.71875])('cut as a circle %f in wide stays one', (inches) => {
    const studied = studyOf(pieces(`dot: { stock: card, cut: ${inches} x ${inches}, shape: circle }`));
    const [panel] = ownNet(studied.editions.metric.shapes.nets, 'dot')?.panels ?? [];
    const box = panel && boxSize(panel.box);
    const [wide, high] = [box?.width.mm ?? 0, box?.height.mm ?? 1];
    expect(wide).toBe(high);
    expect(wide % 1).toBe(0);
    expect(Math.abs(wide - inches * 25.4)).toBeLessThanOrEqual(0.5);
    for (const { x, y } of panel?.outline ?? []) {
      expect(Math.hypot(x.mm - wide / 2, y.mm - wide / 2)).toBeCloseTo(wide / 2, 9);
    }
  });

  it.each([3, 5, 6, 8])('cut as a polygon of %i sides stays regular', (sides) => {
    const studied = studyOf(
      pieces(`tile: { stock: card, cut: 2 11/16 x 3 1/16, shape: polygon, sides: ${sides} }`),
    );
    const [panel] = ownNet(studied.editions.metric.shapes.nets, 'tile')?.panels ?? [];
    const corners = panel?.outline ?? [];
    expect(corners).toHaveLength(sides);
    const lengths = corners.map(({ x, y }, index) => {
      const next = corners[(index + 1) % sides];
      return Math.hypot((next?.x.mm ?? 0) - x.mm, (next?.y.mm ?? 0) - y.mm);
    });
    for (const length of lengths) expect(length).toBeCloseTo(lengths[0] ?? 0, 3);
  });
});

describe('what cannot be near', () => {
  it('is named in a note, and made all the same', () => {
    const study = studyOf(
      pieces(
        [
          'card: { stock: card, cut: 5 x 3 }',
          's0: { stock: card, cut: 1 x 3, on: card, at: { right: 4 } }',
          ...[1, 2, 3, 4].map(
            (left) => `s${left}: { stock: card, cut: 1 x 3, on: card, at: { left: ${left} } }`,
          ),
        ].join('\n'),
      ),
    );
    expect(mergeFindings(study.findings).map(({ severity, rule }) => `${severity} ${rule}`)).toContain(
      'note edition-strained',
    );
    expect(troubles(study)).toEqual([
      'in the metric edition, 1 in of s2 becomes 27 mm, 1.6 mm off: with closer whole numbers s2 would no longer fold and fit',
    ]);
    const layers = study.editions.metric.shapes.layers;
    expect(layers[0]?.reveals.left.mm).toBe(0);
    expect(layers[4]?.reveals.right.mm).toBe(0);
  });
});

describe('what is finer than the ruler', () => {
  // 1/32 in is 0.79375 mm and 1/64 in 0.396875 mm (exactly, by the international inch), which is nearer to 0 than to 1.
  it.each(['4 1/4 x 1/32', '4 1/4 x 1/64', '5 x 1/64', '5 1/8 x 1/50'])(
    'stays there: a band around %s',
    (around) => {
      const study = studyOf(
        pieces(`band: { stock: card, form: belly band, around: ${around}, height: 1 1/2 }`),
      );
      expect([...study.editions.metric.shapes.nets.keys()]).toEqual(['band']);
      expect(Math.min(...gapsOf(study, 'band').across)).toBeGreaterThanOrEqual(1);
    },
  );
});

describe('a project written in metric', () => {
  it('has an inch edition on sixteenths by the same rules', () => {
    const study = studyOf(`---
title: Folder
measurements:
  unit: mm
  stock: { card: { sheet: 210 x 297 } }
  pieces:
    folder: { stock: card, cut: 210 x 148, score: [{ from: left, at: [105] }], panels: { front: B1, back: A1 } }
    cover: { stock: card, cut: 97 x 140, on: folder.front }
---
## Fold
Fold :piece[folder], stick :piece[cover].
`);
    const { own, inch } = study.editions;
    expect(own).toBe('metric');
    const net = ownNet(inch.shapes.nets, 'folder');
    const [back, front] = net?.panels ?? [];
    if (!net || !front || !back) throw new Error('no panels');
    expect(`${boxSize(front.box).width}`).toBe(`${boxSize(back.box).width}`);
    expect(net.size.width.isMultipleOf(Length.of(1, 16, 'in'))).toBe(true);
    const [layer] = inch.shapes.layers;
    expect(`${layer?.reveals.left}`).toBe(`${layer?.reveals.top}`);
  });
});

describe('the paper of the other edition', () => {
  const wide = (stock: string): string =>
    pieces('wrap: { stock: card, cut: 8 1/2 x 11 }').replace(
      '{ sheet: 12 x 12, weight: 80 lb cover }',
      stock,
    );
  const sheetOfWrap = ({ editions }: Study): string[] => {
    const [sheet] = editions.metric.project.stock.get('card')?.sheets ?? [];
    return [sheet?.size.width, sheet?.size.height].map((side) => `${side?.value.mm}`);
  };

  it('is the one people there have, and never bends the numbers', () => {
    const study = studyOf(wide('{ sheet: Letter }'));
    // A4 by ISO 216; 8 1/2 × 11 in are 215.9 × 279.4 mm.
    expect(sheetOfWrap(study)).toEqual(['210', '297']);
    const { width, height } = ownNet(study.editions.metric.shapes.nets, 'wrap')?.size ?? {};
    expect([width?.mm, height?.mm]).toEqual([216, 279]);
    expect(mergeFindings(study.findings).map(({ severity, message }) => `${severity}: ${message}`)).toEqual([
      'note: in the metric edition wrap is 216 × 279 mm, more than its paper there (210 × 297 mm)',
    ]);
  });

  it('is in the unit that its key names, whatever the sheet is in', () => {
    const study = studyOf(wide('{ sheet: Letter, metric sheet: 230 x 320 }'));
    expect(sheetOfWrap(study)).toEqual(['230', '320']);
    const metric = studyOf(
      wide('{ sheet: 305 x 305, inch sheet: 12 x 12 }')
        .replace('unit: in', 'unit: mm')
        .replace('8 1/2 x 11', '100 x 100'),
    );
    expect(troubles(metric)).toEqual([]);
    const [sheet] = metric.editions.inch.project.stock.get('card')?.sheets ?? [];
    expect(`${sheet?.size.width.value}`).toBe('12 in');
  });

  it('is what the stock says it is', () => {
    const study = studyOf(wide('{ sheet: Letter, metric sheet: 230 x 320 mm }'));
    expect(sheetOfWrap(study)).toEqual(['230', '320']);
    expect(troubles(study)).toEqual([]);
  });
});

describe('units:', () => {
  const strips = pieces('a: { stock: card, cut: 9 x 10, corners: 1/3 }');
  const inUnits = (units: string): Study =>
    studyOf(strips.replace('title: Trial', `title: Trial\nunits: ${units}`));

  it.each([
    ['both', true],
    ['metric', true],
    ['inch', false],
  ])('%s: the metric edition is worked out or not', (units, isWorkedOut) => {
    const { editions } = inUnits(units);
    expect(editions.printed).toBe(units);
    expect(editions.metric !== editions.inch).toBe(isWorkedOut);
  });

  it('of an inch sheet printed in millimeters alone leave no word on the grooves of an inch board', () => {
    const scored = strips.replace(
      'cut: 9 x 10, corners: 1/3',
      'cut: 9 x 10, score: [{ from: left, at: [3 3/16] }]',
    );
    const study = studyOf(scored.replace('title: Trial', 'title: Trial\nunits: metric'));
    expect(mergeFindings(study.findings).filter(({ rule }) => rule === 'score-off-groove')).toEqual([]);
    expect(mergeFindings(studyOf(scored).findings).map(({ rule }) => rule)).toContain('score-off-groove');
  });

  it('of a sheet in millimeters alone leave no word on inches', () => {
    const metric = strips.replace('unit: in', 'unit: mm').replace('9 x 10', '40 x 50').replace('1/3', '3');
    const study = studyOf(metric.replace('title: Trial', 'title: Trial\nunits: metric'));
    expect(study.editions.inch).toBe(study.editions.metric);
    expect(mergeFindings(study.findings).filter(({ message }) => /inch/u.test(message))).toEqual([]);
  });
});

describe('a punched edge', () => {
  const rowsOf = ({ editions: { inch, metric } }: Study, id: string): string[] =>
    [inch, metric].map(({ shapes }) => {
      const [row] = ownNet(shapes.nets, id)?.rows ?? [];
      return `${row?.count} about a ${row?.middle}, ${row?.ends.map(({ mm }) => mm.toFixed(2)).join(' and ')} mm left`;
    });

  /** By hand: 83 mm (82.55) for 3 1/4 in would take a thirteenth motif of 3.175 mm every 6.35 mm, 1.8125 mm from its ends. */
  it('has as many motifs in both editions', () => {
    const lace = pieces('mat: { stock: card, cut: 5 x 3 1/4, edge: { along: left, pitch: 1/4, hole: 1/8 } }');
    expect(rowsOf(studyOf(lace), 'mat')).toEqual([
      '12 about a gap, 4.76 and 4.76 mm left',
      '12 about a gap, 4.99 and 4.99 mm left',
    ]);
  });

  it('has fewer where they no longer fit', () => {
    const tight = pieces(
      'mat: { stock: card, cut: 5 x 2 1/8, edge: { along: left, pitch: 1/4, hole: 1/8 } }',
    );
    expect(rowsOf(studyOf(tight), 'mat').map((row) => row.slice(0, 14))).toEqual([
      '8 about a gap,',
      '8 about a gap,',
    ]);
  });
});

describe('a narrow border on two sides', () => {
  it('is the same millimeters as anywhere else on the sheet, and the cut follows', () => {
    const study = studyOf(
      pieces(
        [
          'front: { stock: card, cut: 2 1/4 x 4 }',
          'plate: { stock: card, cut: 2 x 1 1/4, on: front, at: { top: 3/4 } }',
          'label: { stock: card, cut: 1 3/4 x 1, on: plate }',
        ].join('\n'),
      ),
    );
    // 1/8 in is 3.175 mm; 2 1/4 in are 57.15 mm.
    const borders = study.editions.metric.shapes.layers.map(({ reveals }) => [
      reveals.left.mm,
      reveals.right.mm,
    ]);
    expect(borders).toEqual([
      [3, 3],
      [3, 3],
    ]);
    expect(troubles(study)).toEqual([]);
  });
});

describe('how far a cut strays that follows from its border', () => {
  const cutOf = ({ editions: { metric, inch } }: Study, id: string, edition: 'metric' | 'inch'): number[] => {
    const net = ownNet((edition === 'metric' ? metric : inch).shapes.nets, id);
    return net ? [net.size.width.mm, net.size.height.mm] : [];
  };

  it('is what keeps its border the nearest there is', () => {
    const sheet = pieces('p: { stock: card, cut: 34 x 94 }\nl: { stock: card, cut: 26 x 86, on: p }');
    const study = studyOf(sheet.replace('unit: in', 'unit: mm').replace('12 x 12', '300 x 300'));
    // Of 34 mm, 1 5/16 in, a border of 4 mm, 3/16 in, leaves 15/16 in.
    expect(cutOf(study, 'l', 'inch')[0]).toBe(Length.of(15, 16, 'in').mm);
    expect(troubles(study)).toEqual([]);
  });

  it('is 3 mm at most, however many borders lie in one another', () => {
    const lines = ['a: { stock: card, cut: 5 1/2 x 8 }'];
    const [width, height] = [Length.of(11, 2, 'in'), Length.of(8, 1, 'in')];
    for (const [index, id] of ['b', 'c', 'd', 'e', 'f'].entries()) {
      const less = Length.of(index + 1, 2, 'in');
      const cut = [width, height].map((each) => printInches(each.minus(less), 'plain'));
      lines.push(`${id}: { stock: card, cut: ${cut.join(' x ')}, on: ${'abcdef'[index]} }`);
    }
    const study = studyOf(pieces(lines.join('\n')));
    // 3 × 5 1/2 in are 76.2 × 139.7 mm.
    const [wide = 0, high = 0] = cutOf(study, 'f', 'metric');
    expect(Math.max(Math.abs(wide - 76.2), Math.abs(high - 139.7))).toBeLessThanOrEqual(3);
    expect(troubles(study)).toEqual([]);
  });

  it('is nothing for a square, which is chosen by its size', () => {
    const lines = ['p: { stock: card, cut: 3 1/4 x 5 3/4 }', 'l: { stock: card, cut: 2 3/4 x 2 3/4, on: p }'];
    // 2 3/4 in are 69.85 mm.
    expect(cutOf(studyOf(pieces(lines.join('\n'))), 'l', 'metric')).toEqual([70, 70]);
  });
});

describe('where half a step is needed', () => {
  it('only what must give takes it, and the note names that', () => {
    const lines = [
      'f: { stock: card, cut: 3 3/4 x 4 13/16 }',
      'b: { stock: card, cut: 3 x 2 1/4, on: f }',
      'c: { stock: card, cut: 2 3/8 x 1 5/8, on: f, at: { right: 3/8, bottom: 1/2 } }',
    ];
    const study = studyOf(pieces(lines.join('\n')));
    const c = ownNet(study.editions.metric.shapes.nets, 'c');
    expect(c && [c.size.width.mm, c.size.height.mm].every(Number.isInteger)).toBe(true);
    for (const trouble of troubles(study)) expect(trouble).toContain('3/8 in of c becomes 9.5 mm');
  });
});
