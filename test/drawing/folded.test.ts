import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/canvas.ts';
import { moveDrawing } from '../../src/drawing/fold-move.ts';
import { foldedDrawing } from '../../src/drawing/folded.ts';
import { AT_ORIGIN, placeAll } from '../../src/drawing/outline.ts';
import { facesSeen } from '../../src/drawing/seen-paper.ts';
import { readRef } from '../../src/project/ref.ts';
import { foldNet, layDown, sharesOf } from '../../src/shape/fold.ts';
import { moveFlat } from '../../src/shape/fold-moves.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { foldPaper } from '../../src/shape/paint/paper-sheet.ts';
import { USUAL_LOOK } from '../../src/shape/paint/picture.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { bounds } from '../../src/shape/space.ts';
import { paperOf } from '../../src/shape/view/paper-of.ts';
import { viewsOf } from '../../src/shape/view/views.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  elementsOf,
  inchStyle,
  linesOf,
  metricStyle,
  stretchesOf,
  textsOf,
  touching,
} from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);
/** So large that nothing is reduced: a drawing at full size. */
const ROOM = { width: 1000, height: 1000 };

function folded(view = 'folded', style = inchStyle, id = 'box', from = editions, room = ROOM): Drawing {
  const drawing = foldedDrawing(from, id, view, room, style);
  if (!drawing) throw new Error(`no view ${view} of ${id}`);
  return drawing;
}

const faces = ({ svg }: Drawing): readonly string[] =>
  elementsOf(svg).flatMap(({ attributes }) =>
    attributes.class === 'face tint' ? [attributes.fill ?? ''] : [],
  );

/** Lengths of the upright edges in the picture, rounded to 1/100 mm, each once. */
const uprights = ({ svg }: Drawing): Set<number> =>
  new Set(
    stretchesOf(linesOf(svg, 'edge'))
      .filter(([from, to]) => Math.abs(from.x - to.x) < 0.002)
      .map(([from, to]) => Math.round(Math.abs(from.y - to.y) * 100) / 100),
  );

describe('a folded shape', () => {
  it('keeps every upright length as the projection has it: height by the cosine of the tilt', () => {
    const cosine = Math.cos((USUAL_LOOK.tilt * Math.PI) / 180);
    const lengths = [...uprights(folded())];
    // The walls are 4 3/4 in high, the layer on the front 4 1/2 in.
    for (const inches of [4.75, 4.5])
      expect(lengths.some((length) => Math.abs(length - inches * 25.4 * cosine) < 0.02)).toBe(true);
  });

  it('is the metric edition where that leads', () => {
    const cosine = Math.cos((USUAL_LOOK.tilt * Math.PI) / 180);
    const lengths = [...uprights(folded('folded', metricStyle))];
    for (const millimeters of [121, 115])
      expect(lengths.some((length) => Math.abs(length - millimeters * cosine) < 0.02)).toBe(true);
  });

  it('shows the layers in the colors of their stocks, light and dark by the way they face', () => {
    const colors = new Set(faces(folded()));
    expect(colors.size).toBeGreaterThanOrEqual(5);
    // The box's front and side are of one stock and differ in shade alone.
    const flat = new Set(faces(folded('flat')));
    expect(flat.size).toBe(3);
  });

  it('has as many faces flat as the net has panels, and its layers', () => {
    const panels = ownNet(editions.inch.shapes.nets, 'box')?.panels.length ?? 0;
    expect(faces(folded('flat'))).toHaveLength(panels + 3);
  });

  it('has no view that there isn’t', () => {
    for (const view of ['fold-1', 'fold-0', 'fold-99', 'fold-', 'sideways', ''])
      expect(foldedDrawing(editions, 'box', view, ROOM, inchStyle)).toBeUndefined();
    expect(foldedDrawing(editions, 'nothing', 'folded', ROOM, inchStyle)).toBeUndefined();
  });

  it('fits its room', () => {
    const { width, height } = folded('folded', inchStyle, 'box', editions, { width: 40, height: 30 });
    // Half a millimeter of border on each side.
    expect(Math.max(width - 41, height - 31)).toBeCloseTo(0, 6);
  });

  it('reads out what it measures over all and what lies on it', () => {
    // Walls of 4 3/4 in and a flange of 1/2 in on top of them.
    expect(folded().alternative).toContain('Box, folded: 3½ by 5¼ by 1 inches, 89 by 133 by 25 millimeters.');
    expect(folded().alternative).toContain('On it: front, strip and label.');
    expect(folded('flat').alternative).toContain('Box, flat: 9½ by 6¾ inches, 241 by 171 millimeters.');
  });

  it('shows what folds flat a little open, and says how large it is closed', () => {
    const cards = editionsOf(
      'unit: in\npieces:\n  card: { form: single-fold card, size: 4 1/4 x 5 1/2 }\n  mail: { form: envelope, card: 5 1/2 x 4 1/4 }',
    );
    const card = folded('folded', inchStyle, 'card', cards);
    expect(faces(card)).toHaveLength(2);
    expect(new Set(faces(card)).size).toBe(2);
    expect(card.alternative).toContain('Card, folded: 4¼ by 5½ inches, about 108 by about 140 millimeters.');
    const mail = folded('folded', inchStyle, 'mail', cards);
    // Light falls on the flap, which stands off from the back, as on nothing else.
    expect(new Set(faces(mail)).size).toBe(2);
    expect(mail.alternative).toContain('Mail, folded: 5¾ by 4½ inches, about 146 by about 114 millimeters.');
  });

  it('shows the sheets of a piece together, or one of them alone', () => {
    const tray = editionsOf('unit: in\npieces: { box: { form: lidded tray, inside: 4 x 3 x 1 } }');
    const both = folded('folded', inchStyle, 'box', tray);
    const lid = folded('folded', inchStyle, 'box.lid', tray);
    expect(faces(lid).length).toBeGreaterThan(4);
    expect(faces(both).length).toBeGreaterThan(faces(lid).length + 4);
    expect(lid.alternative).toContain('Box lid, folded');
    const high = folded('folded', inchStyle, 'box', tray, { width: 40, height: 100 });
    const wide = folded('folded', inchStyle, 'box', tray, { width: 100, height: 30 });
    expect(high.height).toBeGreaterThan(high.width);
    expect(wide.width).toBeGreaterThan(wide.height);
  });
});

describe('the hand of a drawing', () => {
  const OUTSIDE = '#ff0000';
  const INSIDE = '#0000ff';
  const AROUND = [0, 60, 120, 180, 240, 300].flatMap((turn) => [-60, 24, 60].map((tilt) => ({ turn, tilt })));

  function turnsOf(points: readonly { readonly x: number; readonly y: number }[]): number {
    const doubled = points.map(({ x, y }, index) => {
      const next = points[(index + 1) % points.length] ?? { x, y };
      return x * next.y - next.x * y;
    });
    return Math.sign(doubled.reduce((sum, each) => sum + each, 0));
  }

  /** A mirror changes which way round a polygon's corners follow one another, and nothing else does. */
  it('is that of the paper: the outside of every panel goes round as the flat sheet does, its inside the other way', () => {
    for (const { name, example } of forms) {
      const made = editionsOf(`unit: in\npieces: { it: { form: ${name}, ${example.settings.join(', ')} } }`);
      const net = ownNet(made.inch.shapes.nets, 'it');
      if (!net) throw new Error(`no net of a ${name}`);
      const { hung } = layDown(net);
      const flat = hung.map(({ panel }) => turnsOf(placeAll(panel.outline, { scale: 1, ...AT_ORIGIN })));
      const sheet = paperOf(net, { caliper: 0.3, layers: [], outside: OUTSIDE, inside: INSIDE });
      const seen = new Set<string>();
      for (const pose of [0, 0.3, 0.7]) {
        const { tree } = foldPaper(sheet, sharesOf(hung, pose));
        for (const look of AROUND) {
          for (const { points, panel, color } of facesSeen(tree, look)) {
            expect(turnsOf(points) * (color === OUTSIDE ? 1 : -1), name).toBe(flat[panel]);
            seen.add(color);
          }
        }
      }
      expect([...seen].sort(), name).toEqual([INSIDE, OUTSIDE]);
    }
  });
});

describe('a move of the folding', () => {
  function move(view: string, from = editions, id = 'box', room = ROOM, told = ''): Drawing {
    const drawing = moveDrawing(from, id, view, room, inchStyle, told);
    if (!drawing) throw new Error(`no move ${view} of ${id}`);
    return drawing;
  }

  it('is there for each stage and no other view', () => {
    const shown = ['fold-1', 'fold-2', 'fold-3', 'glued-flat'].map((view) => move(view).svg);
    expect(new Set(shown).size).toBe(4);
    for (const view of ['fold-0', 'fold-99', 'fold-', 'folded', ''])
      expect(moveDrawing(editions, 'box', view, ROOM, inchStyle)).toBeUndefined();
    expect(moveDrawing(editions, 'nothing', 'fold-1', ROOM, inchStyle)).toBeUndefined();
  });

  /** By trigonometry: a cover that is halfway to closed stands square to the other, so its width shows by the sine of the turn. */
  it('is half made: the cover of a card stands square to its back', () => {
    const card = editionsOf('unit: in\npieces:\n  card: { form: single-fold card, size: 4 x 5 }');
    const faces = elementsOf(move('fold-1', card, 'card').svg).filter(
      ({ attributes }) => attributes.class === 'face tint',
    );
    const widths = faces.map(({ attributes }) => {
      const xs = [...(attributes.d ?? '').matchAll(/[ML]([^,]+),/gu)].map(([, x]) => Number(x));
      return Math.max(...xs) - Math.min(...xs);
    });
    const turn = (USUAL_LOOK.turn * Math.PI) / 180;
    const [cover, back] = [4 * 25.4 * Math.abs(Math.sin(turn)), 4 * 25.4 * Math.cos(turn)];
    expect(widths.toSorted((a, b) => a - b)).toEqual([expect.closeTo(cover, 1), expect.closeTo(back, 1)]);
  });

  it('names what turns, with an arrow each, and dots the glue of this move alone', () => {
    const [walls, bottom] = [move('fold-1').svg, move('fold-2').svg];
    const dots = (svg: string): number => linesOf(svg, 'glue-outside').length;
    expect(textsOf(walls)).toContain('tab');
    expect(linesOf(walls, 'move').length).toBeGreaterThan(0);
    expect(dots(walls)).toBeGreaterThan(20);
    expect(textsOf(bottom)).toEqual(expect.arrayContaining(['C4']));
    const last = move('fold-3').svg;
    expect(dots(last)).toBe(0);
    expect(textsOf(last)).not.toContain('tab');
    expect(move('fold-1').alternative).toContain('tab');
  });

  /** The cover of a card comes towards the reader and is seen whole; one that goes back behind its own panel is not. */
  it('dashes what the paper hides of an arrow', () => {
    const card = (direction: string): string =>
      move(
        'fold-1',
        editionsOf(
          `unit: in\npieces:\n  card:\n    cut: 8 x 5\n    score: [{ from: left, at: [4] }]\n    folds: { 'A|B': ${direction} 180 }`,
        ),
        'card',
      ).svg;
    const kinds = (svg: string): string[] =>
      ['move', 'move-hidden'].filter((kind) => linesOf(svg, kind).length > 0);
    expect(kinds(card('valley'))).toEqual(['move']);
    expect(kinds(card('mountain'))).toEqual(['move-hidden']);
  });

  it('lets no name touch another, on every form and in every stage', () => {
    for (const { name, example } of forms) {
      const made = editionsOf(`unit: in\npieces: { box: { form: ${name}, ${example.settings.join(', ')} } }`);
      const views = viewsOf(made.inch.shapes, readRef('box')).filter((view) => /^fold-|^glued/u.test(view));
      const names = ownNet(made.inch.shapes.nets, 'box')?.panels.map((panel) => panel.name ?? panel.id);
      for (const view of views) {
        for (const told of ['', names?.join(' ')]) {
          const { svg } = move(view, made, 'box', { width: 60, height: 56 }, told);
          expect(touching(svg), `${name} ${view}, told of ${told}`).toEqual([]);
        }
      }
    }
  });

  it('names what is told beside it, though nothing is done with it and its name has no room on it', () => {
    const small = { width: 22, height: 22 };
    expect(textsOf(move('fold-1', editions, 'box', small).svg)).not.toContain('front');
    expect(textsOf(move('fold-1', editions, 'box', small, 'Tape the Front.').svg)).toContain('front');
  });

  /** Once round, a tube's walls lie in one plane, and the tab within the wall that it sticks to. */
  it('ends flat, the tab on the wall that it sticks to, where a tube is stuck flat', () => {
    const flat = forms.flatMap(({ name, example }) => {
      const made = editionsOf(`unit: in\npieces: { it: { form: ${name}, ${example.settings.join(', ')} } }`);
      const net = ownNet(made.inch.shapes.nets, 'it');
      const move = net && moveFlat(net);
      return net && move ? [{ name, net, move }] : [];
    });
    expect(flat.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['tuck-end box', 'clip-top box', 'gusseted bag', 'gable box']),
    );
    for (const { name, net, move } of flat) {
      const { panels } = foldNet(net, { at: (fold) => move.at(fold, 1) });
      const [mate] = move.glued;
      const [tab, wall] = [mate?.from, mate?.to].map((id) => bounds(panels.get(id ?? '')?.corners ?? []));
      if (!tab || !wall) throw new Error(`no tab on a ${name}`);
      for (const { least, most } of [tab, wall]) expect(most.z - least.z, name).toBeCloseTo(0, 6);
      expect(tab.least.z, name).toBeCloseTo(wall.least.z, 6);
      expect(tab.least.x, name).toBeGreaterThanOrEqual(wall.least.x - 1.6);
      expect(tab.most.x, name).toBeLessThanOrEqual(wall.most.x + 1.6);
    }
  });
});
