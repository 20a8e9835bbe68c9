import { describe, expect, it } from 'vitest';
import { openSite } from '../site/made.ts';
import { frames } from './browser.ts';
import { BOX, picture, press, said, visit } from './turn-site.ts';

openSite();

describe('playing', () => {
  it('goes on by itself until it is told to pause, and on from there', async () => {
    const { page } = await visit(BOX, { width: 390 });
    expect((await said(page)).button).toBe('Play');
    await page.click('.turn-play');
    await page.waitForFunction(`document.querySelector('.turn input').valueAsNumber > 0.2 &&
      document.querySelector('.turn input').valueAsNumber < 3`);
    expect((await said(page)).button).toBe('Pause');
    await page.click('.turn-play');
    const paused = await said(page);
    expect(paused.button).toBe('Play');
    const still = await picture(page);
    await new Promise((wait) => setTimeout(wait, 300));
    expect(await picture(page)).toBe(still);
    expect((await said(page)).value).toBe(paused.value);
    await page.click('.turn-play');
    await page.waitForFunction(`document.querySelector('.turn input').valueAsNumber > ${paused.value}`);
    expect((await said(page)).value).toBeLessThan(paused.value + 1);
  });

  it('stops where it is folded, and at a touch of the slider', async () => {
    const { page } = await visit(BOX, { width: 390 });
    await page.focus('.turn-slide input');
    await page.keyboard.press('PageDown');
    await page.click('.turn-play');
    await page.waitForFunction(`document.querySelector('.turn-step').textContent.startsWith('Step 6')`);
    await page.waitForFunction(`document.querySelector('.turn-step').textContent === 'Folded'`);
    expect(await said(page)).toMatchObject({ button: 'Play', line: 'Folded' });
    await page.click('.turn-play');
    await page.focus('.turn-slide input');
    await page.keyboard.press('PageUp');
    expect(await said(page)).toMatchObject({ button: 'Play', value: 1 });
  });

  it('says each step once, while it plays only', async () => {
    const { page } = await visit(BOX, { width: 390 });
    const live = (): Promise<unknown> => page.$eval('.turn-step', (line) => line.getAttribute('aria-live'));
    expect(await live()).toBeNull();
    await page.evaluate(`globalThis.heard = [];
      new MutationObserver(() => heard.push(document.querySelector('.turn-step').textContent))
        .observe(document.querySelector('.turn-step'), { childList: true, characterData: true, subtree: true })`);
    await page.click('.turn-play');
    await page.waitForFunction(`document.querySelector('.turn-step').textContent.startsWith('Step 2')`);
    expect(await live()).toBe('polite');
    const heard = (await page.evaluate('heard')) as string[];
    const steps = heard.filter((words) => words !== 'Flat').map((words) => words.slice(0, 6));
    expect(steps).toEqual(['Step 1', 'Step 2']);
    await page.focus('.turn-slide input');
    await press(page, 'Right');
    await frames(page);
    expect(await live()).toBeNull();
  });

  it('goes step by step where motion is unwelcome', async () => {
    const { page } = await visit(BOX, { width: 390, reducedMotion: true });
    expect(await said(page)).toMatchObject({ button: 'Next step', value: 6 });
    for (const [value, words] of [
      [0, /^Flat$/u],
      [1, /^Step 1 of 6: /u],
      [2, /^Step 2 of 6: /u],
    ] as const) {
      await page.click('.turn-play');
      expect(await said(page)).toMatchObject({
        button: 'Next step',
        value,
        words: expect.stringMatching(words),
      });
      const drawn = await picture(page);
      await new Promise((wait) => setTimeout(wait, 200));
      expect(await picture(page)).toBe(drawn);
    }
  });

  it('stops when motion becomes unwelcome', async () => {
    const { page } = await visit(BOX, { width: 390 });
    await page.click('.turn-play');
    await page.emulateMediaFeatures([{ name: 'prefers-reduced-motion', value: 'reduce' }]);
    await page.waitForFunction(`document.querySelector('.turn-play').textContent === 'Next step'`);
    const { value } = await said(page);
    await new Promise((wait) => setTimeout(wait, 200));
    expect((await said(page)).value).toBe(value);
  });
});
