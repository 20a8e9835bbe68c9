import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'puppeteer-core';
import { describe, expect, it } from 'vitest';
import { openSite } from '../site/made.ts';
import { frames } from './browser.ts';
import { BOX, picture, press, said, siteAddress, TRAY, visit, WIDTHS } from './turn-site.ts';

openSite();

describe.each(WIDTHS)('a page opened from disk, %i pixels wide', (width) => {
  it('draws the piece in its still picture’s place, asks for nothing outside the site and complains of nothing', async () => {
    for (const slug of [BOX, TRAY]) {
      const { page, complaints, requests } = await visit(slug, { width });
      const { picture: alternative, line } = await said(page);
      expect(alternative).toMatch(/folded: .* inches, .* millimeters\./u);
      expect(line).toBe('Folded');
      expect((await picture(page)).match(/<path/gu)?.length).toBeGreaterThan(5);
      expect(await page.$('.turn-picture .drawn')).toBeNull();
      expect(complaints).toEqual([]);
      expect(requests.length).toBeGreaterThan(2);
      expect(
        requests.filter((address) => !address.startsWith(siteAddress()) && !address.startsWith('data:')),
      ).toEqual([]);
    }
  });

  it('has the piece as its drawing for print has it, to begin with', async () => {
    const { page } = await visit(BOX, { width, scripts: false });
    const [, , across = 0, down = 1] = String(
      await page.$eval('.turn-picture svg', (drawing) => drawing.getAttribute('viewBox')),
    )
      .split(' ')
      .map(Number);
    const { page: lively } = await visit(BOX, { width });
    const numbers = [...(await picture(lively)).matchAll(/ d="([^"]*)"/gu)].map(([, d = '']) =>
      d
        .split(/[MLZ]/u)
        .filter(Boolean)
        .map((point) => point.split(' ').map(Number)),
    );
    const reach = (axis: number): number => {
      const values = numbers.flat().map((point) => point[axis] ?? Number.NaN);
      return Math.max(...values) - Math.min(...values);
    };
    // The drawing for print keeps half a millimeter free on every side.
    expect(reach(0) / reach(1)).toBeCloseTo((across - 1) / (down - 1), 2);
  });

  it('turns by arrow keys, all the way round and back, without scrolling', async () => {
    const { page } = await visit(BOX, { width });
    const first = await picture(page);
    await page.focus('.turn-picture');
    const scrolled = await page.evaluate('scrollY');
    const seen = new Set([first]);
    for (const key of ['Right', 'Up', 'Left', 'Down'] as const) {
      await press(page, key);
      seen.add(await picture(page));
    }
    expect(seen.size).toBe(4);
    expect(await picture(page)).toBe(first);
    // 24 presses of 15° are once round.
    await press(page, 'Right', 24);
    expect(await picture(page)).toBe(first);
    await press(page, 'Up', 2);
    expect(await picture(page)).not.toBe(first);
    await page.keyboard.press('Home');
    expect(await picture(page)).toBe(first);
    expect(await page.evaluate('scrollY')).toBe(scrolled);
  });

  it('turns by buttons and by dragging, so that neither keys nor a steady hand are needed', async () => {
    const { page } = await visit(BOX, { width });
    const first = await picture(page);
    for (const way of ['left', 'right', 'up', 'down']) {
      await page.click(`[data-turn="${way}"]`);
      expect(await picture(page), way).not.toBe(first);
      await page.click('[data-turn="back"]');
      expect(await picture(page)).toBe(first);
    }
    const box = await (await page.$('.turn-picture'))?.boundingBox();
    if (!box) throw new Error('the picture takes up no room');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 20);
    await page.mouse.up();
    const dragged = await picture(page);
    expect(dragged).not.toBe(first);
    await page.mouse.move(x - 80, y);
    expect(await picture(page), 'let go').toBe(dragged);
  });

  it('folds by the slider, with keys, and says how far', async () => {
    const { page } = await visit(BOX, { width });
    const folded = await picture(page);
    await page.focus('.turn-slide input');
    await page.keyboard.press('Home');
    const flat = await said(page);
    expect([flat.value, flat.words, flat.line]).toEqual([0, 'Flat', 'Flat']);
    expect(flat.picture).toMatch(/flat: .* inches/u);
    expect(await picture(page)).not.toBe(folded);
    await press(page, 'Right');
    expect(await said(page)).toMatchObject({
      value: 0.25,
      words: expect.stringMatching(/^Step 1 of 6: fold /u),
    });
    await page.keyboard.press('PageUp');
    expect((await said(page)).value).toBe(1);
    await page.keyboard.press('PageUp');
    const second = await said(page);
    expect(second).toMatchObject({ value: 2, words: expect.stringMatching(/^Step 2 of 6: fold /u) });
    expect([second.line, second.picture]).toEqual([second.words, second.words]);
    await page.keyboard.press('PageDown');
    expect((await said(page)).value).toBe(1);
    await page.keyboard.press('End');
    expect((await said(page)).words).toBe('Folded');
    expect(await picture(page)).toBe(folded);
  });

  it('leaves room for fingers, and nothing beside the screen', async () => {
    for (const slug of [BOX, TRAY]) {
      const { page } = await visit(slug, { width, touch: true });
      const sizes =
        (await page.evaluate(`[...document.querySelectorAll('.turn button, .turn input')].map((each) => {
        const { width, height } = each.getBoundingClientRect();
        return Math.min(width, height);
      })`)) as number[];
      // WCAG 2.2, 2.5.5 (enhanced) asks for 44 px; 2.5.8 for 24.
      expect(sizes).toHaveLength(7);
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(44);
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      expect(
        await page.$eval('.turn-picture', (frame) =>
          frame.computedStyleMap().get('touch-action')?.toString(),
        ),
      ).toBe('pan-y');
    }
  });

  it('has no fault that axe-core finds, flat and folded', async () => {
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    for (const slug of [BOX, TRAY]) {
      const { page } = await visit(slug, { width });
      await page.evaluate(axe);
      for (const key of ['End', 'Home'] as const) {
        await page.focus('.turn-slide input');
        await page.keyboard.press(key);
        await frames(page);
        const faults = await page.evaluate(`axe.run().then(({ violations }) => violations
          .map(({ id, impact, nodes }) => impact + ': ' + id + ' ' + nodes.map(({ target }) => target).join(', ')))`);
        expect(faults).toEqual([]);
      }
    }
  });
});

/** A finger drawn over the middle of the picture. */
async function swipe(page: Page, across: number, down: number): Promise<void> {
  const session = await page.createCDPSession();
  const box = await (await page.$('.turn-picture'))?.boundingBox();
  if (!box) throw new Error('the picture takes up no room');
  const from = { x: box.x + box.width / 2 - across / 2, y: box.y + box.height / 2 };
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
  for (let step = 1; step <= 10; step += 1) {
    const at = { x: from.x + (across * step) / 10, y: from.y + (down * step) / 10 };
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [at] });
    await frames(page);
  }
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await frames(page);
}

describe('a finger', () => {
  it('turns the piece to and fro, and scrolls the page up and down', async () => {
    const { page } = await visit(BOX, { width: 390, touch: true });
    await page.evaluate(`document.querySelector('.turn-picture').scrollIntoView({ block: 'center' })`);
    const [first, start] = [await picture(page), Number(await page.evaluate('scrollY'))];
    await swipe(page, 0, -150);
    expect(Number(await page.evaluate('scrollY')) - start).toBeGreaterThan(50);
    expect(await picture(page)).toBe(first);
    const scrolled = await page.evaluate('scrollY');
    await swipe(page, 120, 10);
    expect(await picture(page)).not.toBe(first);
    expect(await page.evaluate('scrollY')).toBe(scrolled);
  });
});

describe('a page without scripts', () => {
  it.each(WIDTHS)('has the still picture and nothing that would not work, %i pixels wide', async (width) => {
    const { page, complaints } = await visit(TRAY, { width, scripts: false });
    const box = await (await page.$('.turn-picture svg'))?.boundingBox();
    const frame = await (await page.$('.turn-picture'))?.boundingBox();
    if (!box || !frame) throw new Error('there is no picture');
    expect(box.width).toBeGreaterThan(frame.width * 0.8);
    expect(box.height).toBeLessThan(frame.height);
    expect(await page.$eval('.turn-picture svg', (drawing) => drawing.getAttribute('aria-label'))).toMatch(
      /folded: .* inches/u,
    );
    expect(await (await page.$('.turn-controls'))?.boundingBox()).toBeNull();
    expect(complaints).toEqual([]);
  });
});

describe('a page on paper', () => {
  it('has the picture and not its controls', async () => {
    const { page } = await visit(BOX, { width: 1280 });
    await page.emulateMediaType('print');
    expect(await (await page.$('.turn-controls'))?.boundingBox()).toBeNull();
    expect((await (await page.$('.turn-shape'))?.boundingBox())?.width).toBeGreaterThan(200);
  });
});
