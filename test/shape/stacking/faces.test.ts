import { describe, expect, it } from 'vitest';
import type { Net } from '../../../src/shape/net.ts';
import { type FaceState, faceStates } from '../../../src/shape/stacking/face-states.ts';
import { glueAreas } from '../../../src/shape/stacking/glue-areas.ts';
import { KEEPER, netOf } from '../boxes.ts';
import { FORM_NETS } from './known-nets.ts';

const CALIPER = 0.24;

function facesOf(net: Net): [string, Readonly<Record<'outside' | 'inside', FaceState>>][] {
  return [...faceStates(net, CALIPER)];
}

type Seen = { readonly hidden: readonly string[]; readonly seen: readonly string[] };

const TUCKED: Seen = {
  hidden: [
    'tab',
    'lid-tuck',
    'bottom-tuck',
    'left-dust',
    'right-dust',
    'left-bottom-dust',
    'right-bottom-dust',
  ],
  seen: [],
};

/** An open pot, or a lid to it upside down: one looks in on everything but the outsides of what is stuck inside. */
function potFaces(base: string, before = ''): Seen {
  const walls = ['wall-2', 'wall-3', 'wall-4', 'wall-5', 'wall-6'].map((wall) => `${before}${wall}`);
  const tabs = [`${before}tab`, ...walls.map((wall) => `${wall}-tab`)];
  return { hidden: tabs, seen: [`${before}front`, ...walls, base, ...tabs] };
}

/**
 * By hand, once for each: the panels whose outside is seen from nowhere once all is folded, and those whose inside is
 * seen. Everything else of a closed shape is seen outside and hidden inside.
 */
const BY_HAND: Readonly<Record<string, Seen>> = {
  // Closed flat: inside pages face each other; of an accordion only the first and the last outside are seen.
  'single-fold card': { hidden: [], seen: [] },
  'single-fold card fold: top': { hidden: [], seen: [] },
  'gate-fold card': { hidden: [], seen: [] },
  'accordion card': { hidden: ['page-2', 'page-3'], seen: [] },
  // Every other page lies as the first does; of seven the last is one of them, so that its inside is below.
  'accordion card pages: 7': {
    hidden: ['page-2', 'page-3', 'page-4', 'page-5', 'page-6', 'page-7'],
    seen: ['page-7'],
  },
  // The side flaps lie under the back; the back is seen below the closed flap.
  envelope: { hidden: ['left-flap', 'right-flap'], seen: [] },
  // Flat tubes: the tab lies inside. The end flaps of a pillow lie on each other until they are pressed in.
  'belly band': { hidden: ['tab'], seen: [] },
  'pillow box': { hidden: ['tab'], seen: [] },
  // A band about something thick is open above and below: one looks through it.
  'belly band height: 2': { hidden: ['tab'], seen: ['back', 'left', 'front', 'right', 'tab'] },
  'slide box (sheet 2)': { hidden: ['tab'], seen: ['bottom', 'left', 'top', 'right', 'tab'] },
  // Closed boxes: dust flaps under what closes over them, bottom flaps under the last one, tucks behind their wall.
  'clip-top box': {
    hidden: ['left-dust', 'right-dust', 'tab', 'left-bottom', 'right-bottom', 'back-bottom'],
    seen: [],
  },
  'tuck-end box': TUCKED,
  'tuck-end box ends: reverse': TUCKED,
  // An open bag: one looks in from above, on its bottom too, which is what the side flaps and the front leave of it.
  'gusseted bag': {
    hidden: ['tab', 'left-back-bottom', 'left-front-bottom', 'right-front-bottom', 'right-back-bottom'],
    seen: [
      ...['back', 'left-back', 'left-front', 'front', 'right-front', 'right-back', 'tab'],
      ...['left-back-bottom', 'left-front-bottom', 'right-front-bottom', 'right-back-bottom'],
    ],
  },
  // Shut: of the floor only the front's flap is seen, which goes on last. From the sides one looks into the fold of each
  // gable, on the outside of its gussets; the two handles stand with their insides together.
  'gable box': { hidden: ['tab', 'left-bottom', 'right-bottom', 'back-bottom'], seen: [] },
  // A pot is open above: one looks in on its walls, on its tabs and on what they leave of the floor they are stuck to.
  'polygon box': potFaces('floor'),
  'polygon box lid: 1': potFaces('floor'),
  'polygon box lid: 1 (sheet 2)': potFaces('top', 'lid-'),
  // Shut, 1 in deep at the back and 1 1/2 at the front: the strip lies between the two sides, its outsides together but
  // for the half inch of its longer part that is seen through the gap it leaves in the front.
  'pop-up': { hidden: ['step-front'], seen: [] },
  // Open trays: tabs inside their walls, everything else seen from above.
  tray: trayFaces('front', 'back', ['left', 'right', 'floor']),
  'lidded tray': trayFaces('front', 'back', ['left', 'right', 'floor']),
  'lidded tray (sheet 2)': trayFaces('lid-back', 'lid-front', ['lid-left', 'lid-right', 'top']),
  'slide box': trayFaces('front', 'back', ['drawer-left', 'drawer-right', 'drawer-floor']),
  tag: { hidden: [], seen: ['tag'] },
};

function trayFaces(above: string, below: string, others: readonly string[]): (typeof BY_HAND)[string] {
  const hidden = [above, below].flatMap((wall) => [`${wall}-left-tab`, `${wall}-right-tab`]);
  return { hidden, seen: [above, below, ...others, ...hidden] };
}

describe('what is seen of a folded form', () => {
  it.each(FORM_NETS)('%s', (name, net) => {
    const faces = facesOf(net);
    const hidden = faces.flatMap(([id, { outside }]) => (outside.isSeen ? [] : [id]));
    const seen = faces.flatMap(([id, { inside }]) => (inside.isSeen ? [id] : []));
    expect(hidden.sort()).toEqual([...(BY_HAND[name]?.hidden ?? ['?'])].sort());
    expect(seen.sort()).toEqual([...(BY_HAND[name]?.seen ?? ['?'])].sort());
  });
});

describe('what lies on a face', () => {
  const keeper = faceStates(netOf(KEEPER), CALIPER);
  const on = (panel: string, face: 'outside' | 'inside'): string[] =>
    (keeper.get(panel)?.[face].covers ?? []).map(
      (cover) => `${cover.panel}${cover.isGlued ? ', glued' : ''}`,
    );

  it('is named for both faces, and whether it is glued', () => {
    expect(on('A3', 'inside')).toEqual(['tab, glued']);
    expect(on('D4', 'inside').sort()).toEqual(['A4, glued', 'C4, glued']);
    expect(on('D4', 'outside')).toEqual(['B4, glued']);
    expect(on('A2', 'outside').sort()).toEqual(['B2', 'D2']);
    expect(on('front', 'outside')).toEqual([]);
  });

  it('is what lies right on it only', () => {
    const [net] = FORM_NETS.flatMap(([name, each]) => (name === 'accordion card' ? [each] : []));
    const pages = net && faceStates(net, CALIPER);
    expect(pages?.get('page-1')?.inside.covers.map(({ panel }) => panel)).toEqual(['page-2']);
  });

  it('has its area on the sheet, in exact lengths', () => {
    const [area] = keeper.get('A3')?.inside.covers[0]?.areas ?? [];
    // The tab of half an inch, tapered by an eighth, as it lies on the wall from its left edge.
    expect(area?.map(({ x, y }) => `${x}, ${y}`).sort()).toEqual([
      '0 in, 1 in',
      '0 in, 23/4 in',
      '1/2 in, 45/8 in',
      '1/2 in, 9/8 in',
    ]);
  });
});

describe('glue on a square bottom, whose side flaps cover each other', () => {
  it('is on the flap all the same: what lies over it sticks to the same one', () => {
    const square = netOf(
      KEEPER.replace('cut: 9 1/2 x 6 3/4', 'cut: 8 1/2 x 7 1/2')
        .replace('[1, 4 1/2, 5 1/2, 9]', '[2, 4, 6, 8]')
        .replace('[1, 5 3/4, 6 1/4]', '[2, 6 1/2, 7 1/2]')
        .replace('bottom, at: [2, 6 1/2, 7 1/2]', 'bottom, at: [2, 6, 7]'),
    );
    const side = glueAreas(square, CALIPER).find(({ mate }) => mate.from === 'A4');
    expect(side?.between.length).toBeGreaterThan(0);
    expect(side?.from.areas.length).toBeGreaterThan(0);
  });
});

/** A card 4 in wide and 6 high with what is folded up from below and stuck to it; the glue in inches on the sheet. */
describe('glue on what is folded up', () => {
  const glued = (cut: string, more = ''): string[] =>
    glueAreas(
      netOf(`
  cut: 4 x ${cut}
  score: [{ from: top, at: [6] }${more}]
  folds: { 1|2: mountain 180 }
  glue: { A2: A1 }`),
      CALIPER,
    ).flatMap(({ from: { areas } }) =>
      areas.map((area) => {
        const [xs, ys] = [area.map(({ x }) => x.mm / 25.4), area.map(({ y }) => y.mm / 25.4)];
        return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
          .map((each) => each.toFixed(2))
          .join(' ');
      }),
    );

  it('is along both sides of a pocket, a quarter inch wide: it stays open between', () => {
    expect(glued('9')).toEqual(['0.00 0.25 6.00 9.00', '3.75 4.00 6.00 9.00']);
  });

  it('is all over a hem, and over what makes a card twice as thick', () => {
    expect(glued('6 1/2')).toEqual(['0.00 4.00 6.00 6.50']);
    expect(glued('12')).toEqual(['0.00 4.00 6.00 12.00']);
  });
});
