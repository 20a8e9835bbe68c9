import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { asScored } from '../edition/as-scored.ts';
import { KEEPER, OPEN_TRAY, sheetOf, TRADE_FACT } from '../shape/boxes.ts';
import { findingsIn, workspaceOf } from './workspace.ts';

/** Names that the pictures know, so that a panel may be called by the wrong one, and some that nobody knows. */
const NAMES = ['tab', 'front', 'floor', 'back', 'top', 'base', 'bottom', 'vorne', 'lasche', 'glue-tab'];

/** The lines under `box:` with other names for its panels: the list of names, turned so far; or none, but their cells. */
function renamed(lines: string, turn: number | undefined): string {
  const [whole = '', list = ''] = /\n *panels: *\{([^}]*)\}/u.exec(lines) ?? [];
  const cells = new Map(
    [...list.matchAll(/([\w-]+): *(\w+)/gu)].map(([, name = '', cell = '']) => [name, cell]),
  );
  const byCell = lines
    .replace(whole, '')
    .replace(/^ *(?:trim|taper|glue):.*$/gmu, (line) =>
      line.replace(/[\w-]+/gu, (word) => cells.get(word) ?? word),
    );
  if (turn === undefined || cells.size === 0) return byCell;
  const name = (index: number): string =>
    NAMES[(index + turn) % NAMES.length] + (index < NAMES.length ? '' : `-${index}`);
  const named = [...cells.values()].map((cell, index) => `${name(index)}: ${cell}`);
  return `${byCell}\n  panels: { ${named.join(', ')} }`;
}

/** Every rule that found something in a sheet whose box is to hold a lot, how often, with all lengths that it tells. */
function found(sheet: string): readonly string[] {
  const holding = sheet.replace(
    '\n  pieces:',
    '\n  holds: { item: brick, size: 9 x 5 x 3, in: box }\n  pieces:',
  );
  return findingsIn(workspaceOf(holding))
    .map(({ rule, edition, facts }) => `${rule} ${edition ?? ''} ${lengthsIn(facts).toSorted().join(' ')}`)
    .toSorted();
}

function lengthsIn(facts: unknown): readonly string[] {
  if (facts instanceof Length) return [facts.toString()];
  return typeof facts === 'object' && facts !== null ? Object.values(facts).flatMap(lengthsIn) : [];
}

/** The lines, and with each of their score lines a quarter of an inch further on. */
function slipped(lines: string): readonly string[] {
  const scores = [...lines.matchAll(/at: \[([^\]]*)\]/gu)];
  const moved = scores.flatMap(({ 0: whole, 1: list = '', index }) => {
    const positions = list.split(', ');
    return positions.map((position, at) => {
      const length = `${position} + 1/4`.replace(/^(?:(\d+) )?(?:(\d+)\/(\d+)|(\d+)) \+ 1\/4$/u, sixteenths);
      const slip = positions.with(at, length).join(', ');
      return lines.slice(0, index) + whole.replace(list, slip) + lines.slice(index + whole.length);
    });
  });
  return [lines, ...moved];
}

function sixteenths(_: string, whole = '0', over = '0', under = '1', alone = '0'): string {
  return `${(Number(whole) + Number(alone)) * 16 + (Number(over) * 16) / Number(under) + 4}/16`;
}

/** A sleeve as it stands in a report: its last leaf, an inch wide, sticks to its first wall, which is one groove short. */
const SLEEVE = `
  cut: 7 1/4 x 4
  score:
    - { from: left, at: [1, 3, 4 1/4, 6 1/4] }
  panels: { A: A1, front: B1, C: C1, D: D1, tab: E1 }
  folds: { A|B: mountain 90 }
  glue: { tab: A }`;

const CARD = `
  cut: 8 1/2 x 5 1/2
  score:
    - { from: left, at: [4 1/4] }
  panels: { back: A1, front: B1 }
  folds: { A|B: valley 180 }`;

/** The first sheet of each form's example, by its score lines, where it has such a twin. */
const TWINS = forms.flatMap((form): [string, string][] => {
  const settings = form.example.settings.join(', ');
  const sheet = sheetOf(`\n  form: ${form.name}\n  ${form.example.settings.join('\n  ')}`);
  const [project] = readWorkspaceFromTexts({ 'box/sheet.md': sheet }).projects;
  const net = project && ownNet(buildShapes(project).nets, 'box');
  const scored = net && asScored(net);
  return scored === undefined ? [] : [[`${form.name}, ${settings}`, `\n${scored.replace(/^/gmu, '  ')}`]];
});

describe('what is found in a net by its score lines does not hang on what its panels are called', () => {
  it.each([
    ['a sleeve', SLEEVE],
    ['a card, its outside inside', CARD],
    ['a clip-top box', KEEPER],
    ['another', TRADE_FACT],
    ['a tray', OPEN_TRAY],
    ...TWINS,
  ])(
    '%s',
    (_, lines) => {
      for (const each of slipped(lines)) {
        const own = found(sheetOf(each));
        const alike = [undefined, 0, 1, 2, 4, 7].map((turn) => found(sheetOf(renamed(each, turn))));
        for (const other of alike) expect([each, other]).toEqual([each, own]);
      }
    },
    120_000,
  );

  it('finds the sleeve a groove short, whatever its leaf is called', () => {
    const walls = [undefined, 0, 3, 8].map((turn) => found(sheetOf(renamed(SLEEVE, turn))));
    for (const each of walls) expect(each.filter((line) => line.startsWith('walls-unequal'))).toHaveLength(1);
  });
});
