import { describe, expect, it } from 'vitest';
import type { PublishedState } from '../../src/project/ledger.ts';
import { changesBetween } from '../../src/publish/changes.ts';
import { stateOf } from '../../src/publish/state.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { speaker } from '../../src/words/labels.ts';
import { labels } from '../handout/sample.ts';

const say = speaker(labels);

const SHEET = `---
title: Keeper
measurements:
  unit: in
  stock: { moss: { name: Moss, sheet: 8 1/2 x 11 }, cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces:
    box: { stock: moss, cut: 8 x 6, score: [{ from: left, at: [2, 4] }], panels: { front: B1 } }
    front: { stock: cream, cut: 1 3/4 x 5 3/4, on: box.front }
---
Hello.

## Score the box :step{minutes=5}
Score it.

## Stick the front
Stick :piece[front] on.

:::host
Breathe.
:::
`;

function state(edit: (text: string) => string = (text) => text): PublishedState {
  const [project] = readWorkspaceFromTexts({ 'keeper/sheet.md': edit(SHEET) }).projects;
  if (!project) throw new Error('no project');
  return stateOf(project, buildShapes(project));
}

describe('what changed since a revision', () => {
  it.each<[string, (text: string) => string, readonly string[], readonly string[]]>([
    ['nothing', (text) => text, [], []],
    ['the host note alone', (text) => text.replace('Breathe', 'Smile'), [], []],
    ['spelling of a length', (text) => text.replace('8 x 6', '8.0 × 6 in'), [], []],
    [
      'a layer',
      (text) => text.replace('1 3/4 x 5 3/4', '1 3/4 x 5 5/8'),
      [
        'front was 1¾ × 5¾ in, is 1¾ × 5⅝ in',
        'the place of front was on box front, ⅛ in from the left and ⅛ in from the top, is on box front, ⅛ in from the left and 3⁄16 in from the top',
      ],
      ['front'],
    ],
    [
      'a score line',
      (text) => text.replace('[2, 4]', '[2, 4 1/16]').replace('1 3/4 x', '1 13/16 x'),
      [
        'the scores from left of box were 2 in, 4 in, are 2 in, 4 1⁄16 in',
        'front was 1¾ × 5¾ in, is 1 13⁄16 × 5¾ in',
      ],
      ['box', 'front'],
    ],
    [
      'the paper',
      (text) => text.replace('stock: cream, cut', 'stock: moss, cut'),
      ['the paper of front was Cream, is Moss'],
      ['front'],
    ],
    [
      'a piece taken out',
      (text) => text.replace(/ {4}front:.*\n/u, '').replace('Stick :piece[front] on.', 'Rub it.'),
      ['front is gone: it was 1¾ × 5¾ in', 'step “Stick the front” is reworded'],
      [],
    ],
    [
      'words of a step',
      (text) => text.replace('Score it.', 'Score it twice.'),
      ['step “Score the box” is reworded'],
      [],
    ],
    [
      'minutes of a step',
      (text) => text.replace('minutes=5', 'minutes=6'),
      ['step “Score the box” is reworded'],
      [],
    ],
    [
      'a step’s name',
      (text) => text.replace('## Stick the front', '## Add the front'),
      ['step “Stick the front” is now called “Add the front”'],
      [],
    ],
    ['a new step', (text) => `${text}\n## Fill it\nFill it.\n`, ['step “Fill it” is new'], []],
  ])('%s', (_, edit, changes, recut) => {
    expect(changesBetween(state(), state(edit), say)).toEqual({ changes, recut });
  });

  it('says that steps have been put in another order', () => {
    const { measurements, steps } = state();
    expect(
      changesBetween({ measurements, steps }, { measurements, steps: steps.toReversed() }, say).changes,
    ).toEqual(['the steps are in another order']);
  });
});
