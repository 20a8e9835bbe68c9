import type { Canvas } from './canvas.ts';
import { type Label, LINE_HEIGHT, wrapped } from './lettering.ts';
import type { DrawnBox } from './region.ts';
import type { DrawingStyle } from './style.ts';

/** What a page of a template belongs to. */
export type FootFacts = {
  /** The project's title. */
  readonly project: string;
  /** The revision, as pages of the sheet have it; empty where there is none. */
  readonly state: string;
  readonly name: string;
  /** Of its piece; it is not said where there is but one. */
  readonly page: number;
  readonly pages: number;
};

/** The heights of the two letterings, how to print it and what it is: where there is room, and in a narrow place. */
const WIDE = { large: 5.6, small: 3.2 };
const NARROW = { large: 4.8, small: 2.8 };
/** Millimeters. */
const NARROWER_THAN = 120;
/** Between the two. */
const BETWEEN = 1.6;

type Foot = {
  readonly order: Label;
  readonly facts: Label;
  readonly sizes: typeof WIDE;
  readonly height: number;
};

/** How the page is to be printed, in large letters, over what it is part of; in as many lines as the width asks for. */
export function footFor(told: FootFacts, width: number, { say, shown }: DrawingStyle): Foot {
  const sizes = width < NARROWER_THAN ? NARROW : WIDE;
  const order = wrapped(say('drawing-print-at'), width / sizes.large);
  const key = told.pages > 1 ? 'drawing-foot' : 'drawing-foot-alone';
  const what = say(key, { ...told, edition: say(`drawing-edition-${shown[0]}`) });
  const parts = [say('drawing-facing'), what, told.state].filter((each) => each !== '');
  const facts = wrapped(parts.join(' · '), width / sizes.small);
  const lines = order.length * sizes.large + facts.length * sizes.small;
  return { order, facts, sizes, height: lines * LINE_HEIGHT + BETWEEN };
}

/** Sets a foot along the lower edge of a box. */
export function drawFoot(canvas: Canvas, { order, facts, sizes }: Foot, { left, bottom }: DrawnBox): void {
  const under = { x: left, y: bottom - 0.8 };
  const box = canvas.label(facts, under, { size: sizes.small, anchor: 'start', sits: 'over' });
  let y = box.top - BETWEEN;
  for (const line of order.toReversed()) {
    canvas.label([line], { x: left, y }, { size: sizes.large, anchor: 'start', sits: 'over', strong: true });
    y -= sizes.large * LINE_HEIGHT;
  }
}
