import { accentOf } from '../drawing/accent.ts';
import { cssString } from '../handout/fonts.ts';
import { pageOf } from '../handout/page-css.ts';
import { stocksUsed } from '../handout/papers.ts';
import type { Setting } from '../handout/setting.ts';
import type { Paper } from '../project/model.ts';
import type { Room } from './room.ts';

const SIZE: Readonly<Record<Paper, string>> = { letter: '8.5in 11in', a4: '210mm 297mm' };

/** The paper, the type and the colour of one card; `foot` runs along the bottom of its pages. */
export function cueRules(setting: Setting, paper: Paper, { points }: Room, foot: string): string {
  const { color, tint } = accentOf(stocksUsed(setting).find((stock) => stock.color)?.color?.value);
  const box = (place: string, content: string): string =>
    `@${place} { content: ${content}; font: 10pt/1.3 "Public Sans", sans-serif; color: #333; }`;
  return `:root { --accent: ${color}; --tint: ${tint}; font-size: ${points}pt; }
@page {
  size: ${SIZE[paper]};
  ${box('bottom-left', cssString(foot))}
  ${box('bottom-right', pageOf(setting.voice))}
}`;
}
