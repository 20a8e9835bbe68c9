import { describe, expect, it } from 'vitest';
import type { TurnModel } from '../../../src/drawing/turn-model.ts';
import { turnViews } from '../../../src/handout/drawings.ts';
import { settingOf } from '../../../src/handout/setting.ts';
import { labels, sampleOf, settingFor, sheetHtml } from '../../handout/sample.ts';

const BOX = sampleOf(`
unit: in
stock: { moss: { name: Moss, sheet: 12 x 12, color: "#6b7f5b" } }
pieces:
  seed-box: { stock: moss, form: tuck-end box, inside: 2 x 1 x 3 1/2 }
  front:    { stock: moss, cut: 1 3/4 x 3 1/4, on: seed-box.front }
`);
const TRAY = sampleOf(`
unit: in
stock: { moss: { name: Moss, sheet: 12 x 12 } }
pieces:
  tray: { stock: moss, form: lidded tray, inside: 4 x 3 x 1 }
  box:
    stock: moss
    cut: 8 x 6
    score: [{ from: left, at: [1 1/2, 6 1/2] }, { from: top, at: [1 1/2, 4 1/2] }]
    panels: { base: B2, front: B3, back: B1 }
    slit: [A|B 1, A|B 3, B|C 1, B|C 3]
    glue: { A1: back, C1: back, A3: front, C3: front }
`);

type TurnView = ReturnType<typeof turnViews>[number];

function only(views: readonly TurnView[]): TurnView {
  const [view] = views;
  if (!view || views.length > 1) throw new Error(`${views.length} pieces turn`);
  return view;
}

function dataOf(view: TurnView): TurnModel & { readonly said: readonly string[] } {
  return JSON.parse(view.data.toString()) as TurnModel & { readonly said: readonly string[] };
}

describe('pieces that turn', () => {
  it('are those that fold, and on a page only', () => {
    expect(turnViews(settingFor(BOX, 'page')).map(({ id, name }) => [id, name])).toEqual([
      ['seed-box', 'Seed box'],
    ]);
    for (const target of ['letter', 'a4', 'large-print'] as const) {
      expect(turnViews(settingFor(BOX, target))).toEqual([]);
      expect(sheetHtml(BOX, target)).not.toContain('turn-picture');
    }
  });

  it('have a text alternative with measurements, folded and flat, in inches and millimeters', () => {
    const { folded, flat, still } = only(turnViews(settingFor(BOX, 'page')));
    expect(folded).toMatch(
      /^Seed box, folded: 2.* by .* inches, \d+ by \d+ by \d+ millimeters\. On it: front\.$/u,
    );
    expect(flat).toMatch(/^Seed box, flat: .* inches, \d+ by \d+ millimeters\. On it: front\.$/u);
    expect(still.toString()).toContain(`aria-label="${folded}"`);
  });

  it('say what each step folds, one line a step', () => {
    const view = only(turnViews(settingFor(BOX, 'page')));
    const { said, steps } = dataOf(view);
    expect(said).toEqual([
      'Step 1 of 7: fold left, right, back, and tab',
      'Step 2 of 7: fold left bottom dust and right bottom dust',
      'Step 3 of 7: fold bottom tuck',
      'Step 4 of 7: fold bottom',
      'Step 5 of 7: fold left dust and right dust',
      'Step 6 of 7: fold lid tuck',
      'Step 7 of 7: fold lid',
    ]);
    expect([steps, view.steps]).toEqual([7, 7]);
  });

  it('name the sheet of a further one, name unnamed panels as the drawings do', () => {
    const [tray, box] = turnViews(settingFor(TRAY, 'page')).map((view) => dataOf(view).said);
    expect(tray?.[3]).toBe('Step 4 of 6, lid: fold lid left and lid right');
    expect(box?.[0]).toBe('Step 1 of 3: fold A1, A3, C1, and C3');
  });

  it('call it bending where a panel is made of strips', () => {
    const pillow = sampleOf(`
unit: in
stock: { moss: { name: Moss, sheet: 12 x 12 } }
pieces: { box: { stock: moss, form: pillow box, size: 3 x 5, depth: 1 } }
`);
    const { said } = dataOf(only(turnViews(settingFor(pillow, 'page'))));
    expect(said[1]).toBe('Step 2 of 3: bend front, back, and tab');
  });

  it('count what is too much to name', () => {
    const many = sampleOf(`
unit: in
stock: { moss: { name: Moss, sheet: 12 x 12 } }
pieces:
  fan: { stock: moss, cut: 9 x 4, score: [{ from: left, at: [1 1/2, 3, 4 1/2, 6, 7 1/2] }], panels: { a: A1, b: B1, c: C1, d: D1, e: E1, f: F1 } }
`);
    // It rests on b, the first panel that hangs on two others.
    const { said } = dataOf(only(turnViews(settingFor(many, 'page'))));
    expect(said).toEqual(['Step 1 of 1: fold a, c, d and 2 more']);
  });
});

describe('the data in a page', () => {
  it('cannot end its element, whatever the words are', () => {
    const hostile = { ...labels, texts: new Map([...labels.texts, ['turn-step', '</script><b>{step}']]) };
    const view = only(turnViews(settingOf(BOX.editions, 'page', hostile, new Map())));
    expect(view.data.toString()).not.toContain('<');
    expect(dataOf(view).said[0]).toBe('</script><b>1');
  });

  it('stands in the page once for each piece, beside its still picture', () => {
    const html = sheetHtml(TRAY, 'page');
    const found = [...html.matchAll(/<script type="application\/json">(.*?)<\/script>/gu)];
    expect(found.map(([, json = '']) => (JSON.parse(json) as TurnModel).sheets.length)).toEqual([2, 1]);
    expect(html.match(/<div class="turn-picture"[^>]*><span class="drawn"/gu)).toHaveLength(2);
    // What only a script can work is hidden until one does.
    expect(html.match(/<div class="turn-controls" hidden>/gu)).toHaveLength(2);
  });
});
