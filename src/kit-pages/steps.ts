import type { Layout, Step, StockPlan, Yield } from '../kit/plan.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { kindLetter, kindName } from './kinds.ts';
import { joined, type KitWords } from './words.ts';

/** A step at the trimmer. */
export type StepRow = {
  readonly number: number;
  /** What the trimmer is set to; undefined where it stays as it was. */
  readonly setting: SafeHtml | undefined;
  /** `2 cuts from the top edge of the sheet`. */
  readonly cut: SafeHtml;
  readonly gives: SafeHtml;
  readonly tooLong: SafeHtml | undefined;
};

export function stepRows(plan: StockPlan, { steps }: Layout, words: KitWords): readonly StepRow[] {
  return steps.map((step, index) => {
    const before = steps[index - 1];
    const stays = before?.setting.equals(step.setting) === true;
    const { voice } = words;
    return {
      number: step.number,
      setting: stays ? undefined : words.length(step.setting),
      cut: cutOf(step, words),
      gives: joined(step.yields.map((each) => yieldOf(each, plan, words))),
      tooLong: step.tooLong ? voice.phrase('kit-too-long', { length: words.length(step.length) }) : undefined,
    };
  });
}

function cutOf({ from, part, cutsEach }: Step, words: KitWords): SafeHtml {
  const { voice } = words;
  const cuts = voice.count('kit-cuts', cutsEach);
  const edge = voice.say(`edge-${from}`);
  if (part.isSheet) return voice.phrase('kit-cut-sheet', { cuts, edge });
  const size = words.size(part);
  return part.count === 1
    ? voice.phrase('kit-cut-part', { cuts, edge, size })
    : voice.phrase('kit-cut-parts', { cuts, edge, size, count: part.count });
}

function yieldOf(given: Yield, { kinds }: StockPlan, words: KitWords): SafeHtml {
  const { voice } = words;
  const { count } = given;
  if (given.kind === 'piece') {
    const kind = kinds[given.piece];
    const piece = `${kindLetter(given.piece)} ${kind ? kindName(kind, voice) : ''}`;
    return voice.phrase('kit-gives-piece', { count, piece });
  }
  const size = words.size(given.size);
  const [one, more] = GIVES[given.kind];
  return count === 1 ? voice.phrase(one, { size }) : voice.phrase(more, { count, size });
}

const GIVES = {
  strip: ['kit-gives-strip', 'kit-gives-strips'],
  'off-cut': ['kit-gives-off-cut', 'kit-gives-off-cuts'],
} as const;
