import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer-core';
import { siteFolder, visit as visitPage } from '../site/made.ts';
import { type Circumstances, frames, type OpenPage } from './browser.ts';

export const BOX = 'seed-packet-keeper';
export const TRAY = 'shortbread-tray';
/** Pixels across: a phone, and a screen on a table. */
export const WIDTHS: readonly number[] = [390, 1280];

/** Where the site lies, as a page's address begins. */
export function siteAddress(): string {
  return pathToFileURL(`${siteFolder()}/`).href;
}

/** A project's page as a reader opens it from disk. */
export function visit(slug: string, circumstances: Circumstances): Promise<OpenPage> {
  return visitPage(`${slug}/index.html`, circumstances);
}

/** All that is drawn of the first piece. */
export async function picture(page: Page): Promise<string> {
  await frames(page);
  return (await page.evaluate(`document.querySelector('.turn-shape').innerHTML`)) as string;
}

/** The slider's number and words, the line beside it, the picture's alternative and the button's name. */
export type Said = { value: number; words: string; line: string; picture: string; button: string };

/** What is said of the first piece. */
export async function said(page: Page): Promise<Said> {
  await frames(page);
  return (await page.evaluate(`(() => {
    const at = (path) => document.querySelector('.turn ' + path);
    return {
      value: at('input').valueAsNumber,
      words: at('input').getAttribute('aria-valuetext'),
      line: at('.turn-step').textContent,
      picture: at('svg').getAttribute('aria-label'),
      button: at('.turn-play').textContent,
    };
  })()`)) as Said;
}

export async function press(page: Page, key: 'Left' | 'Right' | 'Up' | 'Down', times = 1): Promise<void> {
  for (let time = 0; time < times; time += 1) await page.keyboard.press(`Arrow${key}`);
}
