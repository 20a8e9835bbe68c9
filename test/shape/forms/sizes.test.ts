import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { printSize } from '../../../src/measure/print.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import { boxSize, type Net } from '../../../src/shape/net.ts';
import { bounds } from '../../../src/shape/space.ts';
import { sixteenths } from './any.ts';
import { CARDSTOCK, inches, netsOf } from './building.ts';

const BOXES = ['clip-top box', 'tuck-end box', 'tray', 'lidded tray', 'slide box', 'gusseted bag'];

function sizeOf(net: Net, id: string): string {
  const panel = net.panels.find((each) => each.id === id);
  if (!panel) throw new Error(`no panel ${id}`);
  return printSize(boxSize(panel.box), 'in');
}

/** Board of 1/16 in: thick enough to be allowed for. */
const BOARD = inches(1, 16);

describe('a box of cardstock', () => {
  it.each(BOXES)('has its score lines at the numbers written: %s', (name) => {
    const [net] = netsOf(name, { settings: { inside: '3 1/2 x 1 x 4 3/4' } });
    expect(sizeOf(net, 'front')).toBe('3 1/2 × 4 3/4 in');
  });

  it.each(BOXES)('is the same whether its inside or its outside is given: %s', (name) => {
    const inside = netsOf(name, { settings: { inside: '3 1/2 x 1 x 4 3/4' } });
    const outside = netsOf(name, { settings: { outside: '3 1/2 x 1 x 4 3/4' } });
    expect(outside).toEqual(inside);
  });
});

describe('a box of board', () => {
  it('lies scored half a thickness a wall outside its inside, and inside its outside', () => {
    const settings = { inside: '4 x 2 x 3' };
    const [box] = netsOf('tuck-end box', { settings, caliper: BOARD });
    expect(sizeOf(box, 'front')).toBe('4 1/16 × 3 1/16 in');
    const [tray] = netsOf('tray', { settings, caliper: BOARD });
    expect(sizeOf(tray, 'floor')).toBe('4 1/16 × 2 1/16 in');
    const [outside] = netsOf('tuck-end box', { settings: { outside: '4 x 2 x 3' }, caliper: BOARD });
    expect(sizeOf(outside, 'front')).toBe('3 15/16 × 2 15/16 in');
  });

  it('is as large outside as inside and two thicknesses, in every direction', () => {
    const caliper = fc.constantFrom(BOARD, inches(1, 8), Length.of(3, 1, 'mm'), CARDSTOCK);
    const size = fc.tuple(sixteenths(32, 96), sixteenths(16, 32), sixteenths(32, 96));
    fc.assert(
      fc.property(
        size,
        caliper,
        fc.constantFrom('clip-top box', 'tuck-end box'),
        (counts, thickness, name) => {
          const inside = counts.map((count) => inches(count, 16));
          const text = counts.map((count) => `${count}/16`).join(' x ');
          const [net] = netsOf(name, { settings: { inside: text }, caliper: thickness });
          const front = net.panels.find(({ id }) => id === 'front');
          const side = net.panels.find(({ id }) => id === 'left');
          if (!front || !side) throw new Error('a box without walls');
          const scored = [boxSize(front.box).width, boxSize(side.box).width, boxSize(front.box).height];
          for (const [index, length] of scored.entries()) {
            const outside = length.plus(thickness);
            const wanted = (inside[index] ?? length).plus(thickness.times(2));
            // Rounded to a 1/16 in ruler, so at most half of that off.
            expect(outside.minus(wanted).abs().greaterThan(inches(1, 32))).toBe(false);
          }
        },
      ),
    );
  });

  it('is written in millimeters on a metric ruler', () => {
    const [net] = netsOf('tray', {
      settings: { inside: '90 x 60 x 25' },
      unit: 'mm',
      caliper: Length.of(1, 1, 'mm'),
    });
    expect(net.scores.map(({ at }) => at.map(({ mm }) => mm))).toEqual([
      [26, 117],
      [26, 87],
    ]);
  });
});

describe('a part that goes over another', () => {
  /**
   * Between their walls lie half a thickness of either on either side, and a thickness for each tab that is glued inside
   * the outer one: inside two facing walls of a lid, inside the bottom of a sleeve. Geometry, no source needed.
   */
  it('leaves room for its walls and the tabs inside it, whatever the paper', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom('lidded tray', 'slide box'),
        fc.constantFrom('in', 'mm'),
        (tenths, name, unit) => {
          const caliper = Length.of(tenths, 10, 'mm');
          const inside = unit === 'in' ? '4 x 3 x 2' : '100 x 75 x 50';
          const [base, over] = netsOf(name, { settings: { inside }, unit, caliper });
          if (!over) throw new Error('no second sheet');
          const [lower, upper] = [base, over].map((net) =>
            net.panels.find(({ id }) => ['floor', 'drawer-floor', 'top'].includes(id)),
          );
          if (!lower || !upper) throw new Error('no floor');
          const more = boxSize(upper.box).width.minus(boxSize(lower.box).width);
          const least = caliper.times(name === 'slide box' ? 3 : 4);
          expect(more.greaterThan(least)).toBe(true);
          expect(more.minus(least).greaterThan(inches(3, 16))).toBe(false);
        },
      ),
    );
  });

  it('keeps to the grooves of an eighth-inch board with cardstock', () => {
    const [, lid] = netsOf('lidded tray', { settings: { inside: '4 x 3 x 2' } });
    expect(lid && sizeOf(lid, 'top')).toBe('4 1/8 × 3 1/8 in');
  });

  it('takes the clearance given', () => {
    const [, sleeve] = netsOf('slide box', { settings: { inside: '3 x 4 x 1', clearance: '1/16' } });
    expect(sleeve && sizeOf(sleeve, 'top')).toBe('3 1/16 × 4 in');
    expect(sleeve && sizeOf(sleeve, 'left')).toBe('1 1/16 × 4 in');
  });
});

describe('an envelope', () => {
  /**
   * US announcement envelopes and the largest card usual in each, in inches: thoughtco.com/envelope-design-styles and
   * a printer's table (ebaprinting.com), which agree on these rows. No standard fixes them. The 1/4 in between is a
   * trade rule.
   */
  it.each([
    ['A2', '5 1/2 x 4 1/8', '5 3/4 × 4 3/8 in'],
    ['A6', '6 1/4 x 4 1/2', '6 1/2 × 4 3/4 in'],
    ['A7', '7 x 5', '7 1/4 × 5 1/4 in'],
    ['A8', '7 7/8 x 5 1/4', '8 1/8 × 5 1/2 in'],
    ['A9', '8 1/2 x 5 1/2', '8 3/4 × 5 3/4 in'],
    ['A10', '9 1/4 x 5 3/4', '9 1/2 × 6 in'],
  ])('for a card is the %s of the trade', (_, card, size) => {
    const [net] = netsOf('envelope', { settings: { card } });
    expect(sizeOf(net, 'front')).toBe(size);
  });
});

describe('a tray', () => {
  const CASES = [
    // Open boxes from a sheet with corner squares cut: V = x(a − 2x)(b − 2x). The largest of 5 × 8 in has x = 1 and
    // 18 cubic inches exactly; the 12 × 12 in one x = 2 and 128 (Thomas' Calculus, applied optimization, Example 1:
    // from memory); 7 × 11 in with x = 1 has 45 (a worked answer at wyzant.com).
    { sheet: '5 × 8 in', inside: '3 x 6 x 1', volume: 18 },
    { sheet: '12 × 12 in', inside: '8 x 8 x 2', volume: 128 },
    { sheet: '7 × 11 in', inside: '5 x 9 x 1', volume: 45 },
  ];
  it.each(CASES)('of a $sheet sheet holds $volume cubic inches', ({ sheet, inside, volume }) => {
    const [net] = netsOf('tray', { settings: { inside } });
    expect(printSize(net.size, 'in')).toBe(sheet);
    const { least, most } = bounds([...foldNet(net).panels.values()].flatMap(({ corners }) => corners));
    const folded = (most.x - least.x) * (most.y - least.y) * (most.z - least.z);
    expect(folded / 25.4 ** 3).toBeCloseTo(volume, 9);
  });

  it('cuts its corner tabs back where two would meet on one wall', () => {
    const [whole] = netsOf('tray', { settings: { inside: '4 x 4 x 2' } });
    expect(sizeOf(whole, 'front-left-tab')).toBe('2 × 2 in');
    const [short] = netsOf('tray', { settings: { inside: '3 x 4 x 2' } });
    expect(sizeOf(short, 'front-left-tab')).toBe('2 × 1 1/2 in');
    const [asked] = netsOf('tray', { settings: { inside: '4 x 4 x 2', tab: '1/2' } });
    expect(sizeOf(asked, 'front-left-tab')).toBe('2 × 1/2 in');
  });
});

describe('a clip-top box', () => {
  it('holds seed packets of 3 1/4 × 4 1/2 in behind a layer with 1/8 in all round', () => {
    const [net] = netsOf('clip-top box', { settings: { inside: '3 1/2 x 1 x 4 3/4', tab: '1/2' } });
    expect(printSize(net.size, 'in')).toBe('9 1/2 × 6 3/4 in');
    expect(sizeOf(net, 'front')).toBe('3 1/2 × 4 3/4 in');
  });

  it('is the trade box of 2 1/2 × 1 1/4 × 4 1/4 in on a sheet of 8 × 6 3/4 in (common practice, no source)', () => {
    const settings = { inside: '2 1/2 x 1 1/4 x 4 1/4', tab: '1/2', flange: '5/8' };
    const [net] = netsOf('clip-top box', { settings });
    expect(printSize(net.size, 'in')).toBe('8 × 6 3/4 in');
    const said = net.scores.map(({ from, at }) => `${from} ${at.map((each) => String(each)).join(', ')}`);
    expect(said).toEqual(['left 5/4 in, 15/4 in, 5 in, 15/2 in', 'bottom 5/4 in, 11/2 in, 49/8 in']);
  });

  it('folds to its measurements, its flanges back to back in the middle', () => {
    const [net] = netsOf('clip-top box', { settings: { inside: '3 1/2 x 1 x 4 3/4' } });
    const shape = foldNet(net);
    const corners = (id: string) => shape.panels.get(id)?.corners ?? [];
    const [front, back] = [bounds(corners('front')), bounds(corners('back'))];
    expect((front.most.x - front.least.x) / 25.4).toBeCloseTo(3.5, 9);
    expect((front.most.y - front.least.y) / 25.4).toBeCloseTo(4.75, 9);
    expect((front.most.z - back.most.z) / 25.4).toBeCloseTo(1, 9);
    const flanges = ['front-flange', 'back-flange'].map((id) => bounds(corners(id)));
    for (const { least, most } of flanges) {
      expect(least.z / 25.4).toBeCloseTo(front.most.z / 25.4 - 0.5, 9);
      expect(most.z).toBeCloseTo(least.z, 9);
      expect((least.y - front.most.y) / 25.4).toBeCloseTo(0, 9);
      expect((most.y - front.most.y) / 25.4).toBeCloseTo(0.5, 9);
    }
  });
});
