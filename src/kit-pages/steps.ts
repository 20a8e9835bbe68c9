import type { SheetLayout } from '../kit/plan.ts';
import type { SheetTree } from '../kit/sheet-tree.ts';
import type { CuttingStep } from '../kit/steps.ts';
import { sameSize } from '../measure/size.ts';
import { columnName } from '../shape/cells.ts';
import type { SafeHtml } from '../words/safe-html.ts';
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

export function stepRows({ steps, tree }: SheetLayout, words: KitWords): readonly StepRow[] {
  return steps.map((step, index) => {
    const stays = steps[index - 1]?.setting.equals(step.setting) === true;
    return {
      number: index + 1,
      setting: stays ? undefined : words.length(step.setting),
      cut: cutOf(step, tree, words),
      gives: givesOf(step, words),
      tooLong: step.tooLong
        ? words.voice.phrase('kit-too-long', { length: words.length(step.length) })
        : undefined,
    };
  });
}

function cutOf({ from, cuts: parts }: CuttingStep, sheet: SheetTree, words: KitWords): SafeHtml {
  const { voice } = words;
  const [first = []] = parts;
  const [part = sheet] = first;
  const cuts = voice.count('kit-cuts', first.length);
  const edge = voice.say(`edge-${from}`);
  if (sameSize(part, sheet)) return voice.phrase('kit-cut-sheet', { cuts, edge });
  const size = words.size(part);
  const count = parts.length;
  return voice.phrase(voice.say.counted('kit-cut-parts', count), { cuts, edge, size, count });
}

/** What comes off, equal parts together, pieces by their letters; nothing where the blade took all that was left. */
function givesOf({ yields }: CuttingStep, words: KitWords): SafeHtml {
  const alike = new Map<string, { part: SheetTree; count: number }>();
  for (const part of yields) {
    if (part.width.sign === 0 || part.height.sign === 0) continue;
    const key = part.kind === 'blank' ? `${part.blank}` : `${part.kind} ${part.width} x ${part.height}`;
    alike.set(key, { part, count: (alike.get(key)?.count ?? 0) + 1 });
  }
  return joined([...alike.values()].map(({ part, count }) => giveOf(part, count, words)));
}

function giveOf(part: SheetTree, count: number, words: KitWords): SafeHtml {
  const { voice } = words;
  if (part.kind === 'blank') {
    return voice.phrase('kit-gives-piece', { count, piece: columnName(part.blank) });
  }
  const size = words.size(part);
  return voice.phrase(voice.say.counted(GIVES[part.kind], count), { count, size });
}

const GIVES = {
  strips: 'kit-gives-strips',
  waste: 'kit-gives-offcuts',
} as const;
