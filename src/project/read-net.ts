import { Fields } from './fields.ts';
import { EDGES, KNOWN_KEYS } from './known-keys.ts';
import type { Cell, CellName, FoldDirection, FoldSetting, NetAsWritten, ScoreGroup, Slit } from './model.ts';
import { type Reader, type ReadValue, refuse } from './reader.ts';
import type { At, Place } from './source.ts';
import { asChoice, asLength, asMatch, asText } from './values.ts';
import type { YamlNode } from './yaml-tree.ts';

/** The keys that describe a net: `score`, `panels`, `trim`, `slit`, `taper`, `folds`, `glue`. */
export function readNet(fields: Fields, reader: Reader): NetAsWritten {
  return {
    score: fields.list('score', asScore),
    panels: fields.named('panels', 'panels by name, such as { front: B3 }').flatMap(({ name, value }) => {
      const cell = asCell(value, name.value, reader);
      return cell ? [{ name, cell }] : [];
    }),
    trim: fields.list('trim', asText),
    slit: fields.list('slit', asSlit),
    taper: fields.list('taper', asText),
    folds: fields.named('folds', 'folds by line, such as { 1|2: valley 90 }').flatMap(({ name, value }) => {
      const fold = readFold(name, value, reader);
      return fold ? [fold] : [];
    }),
    glue: fields.named('glue', 'what sticks to what, such as { tab: A3 }').flatMap(({ name, value }) => {
      const to = asText(value, name.value, reader);
      return to ? [{ from: name as CellName, to }] : [];
    }),
  };
}

const asScore: ReadValue<ScoreGroup> = (node, key, reader) => {
  if (node.kind !== 'map') return refuse(node, key, '{ from: left, at: [1, 4 1/2] }', reader);
  const fields = new Fields(node, key, reader, node.at, KNOWN_KEYS.score);
  const from = fields.require('from', asChoice(EDGES));
  fields.expect('at');
  const at = fields.list('at', asLength);
  return from && { from, at };
};

/** `B3`: columns A, B, … from the left, rows 1, 2, … from the top. */
const asCell: ReadValue<At<Cell>> = asMatch(
  'a cell, such as B3',
  /^([A-Z])\s*(\d{1,2})$/iu,
  ([, letter, digits]) => {
    const row = Number(digits) - 1;
    return row < 0 ? undefined : { column: columnOf(letter), row };
  },
);

/** `A|B 1-2` or `A|B 4`: between two columns, through rows; `1|2 A-C`: between two rows, through columns. */
const asSlit: ReadValue<Slit> = (node, key, reader) => {
  const slit = asMatch(
    'a score line and the cells it passes, such as A|B 1-2',
    /^(\w{1,2})\s*\|\s*(\w{1,2})\s+(\w{1,2})(?:\s*[-–]\s*(\w{1,2}))?$/u,
    ([, before = '', after = '', first = '', last = first]) => {
      const line = lineBetween(before, after);
      const across = line?.between === 'columns' ? 'rows' : 'columns';
      const [from, to] = [indexIn(across, first), indexIn(across, last)];
      if (!line || from === undefined || to === undefined || to < from) return undefined;
      return { ...line, from, to };
    },
  )(node, key, reader);
  return slit && { ...slit.value, at: slit.at };
};

function readFold(name: At<string>, node: YamlNode, reader: Reader): FoldSetting | undefined {
  const [, before = '', after = ''] = /^(\w{1,2})\s*\|\s*(\w{1,2})$/u.exec(name.value.trim()) ?? [];
  const line = lineBetween(before, after);
  if (!line) {
    const expected = 'a score line between neighbours, such as 1|2 or A|B';
    reader.report({
      rule: 'unexpected-value',
      at: name.at,
      facts: { key: 'folds', expected, actual: name.value },
    });
  }
  const fold = asFold(node, name.value, reader);
  return line && fold && { ...line, ...fold.value, at: spanning(name.at, fold.at) };
}

/** `valley 90`, `mountain` (90) or `flat` (0). */
const asFold: ReadValue<At<{ direction: FoldDirection; angle: number }>> = asMatch(
  'a fold, such as valley 90, mountain 45 or flat',
  /^(mountain|valley|flat)(?:\s+(\d{1,3}(?:\.\d{1,4})?)\s*°?)?$/iu,
  ([, word, digits]) => {
    const direction = word?.toLowerCase() as FoldDirection;
    if (direction === 'flat') return digits === undefined ? { direction, angle: 0 } : undefined;
    const angle = Number(digits ?? 90);
    return angle > 0 && angle <= 180 ? { direction, angle } : undefined;
  },
);

type Line = Pick<Slit, 'between' | 'line'>;

function lineBetween(before: string, after: string): Line | undefined {
  for (const between of ['columns', 'rows'] as const) {
    const [line, next] = [indexIn(between, before), indexIn(between, after)];
    if (line !== undefined && next === line + 1) return { between, line };
  }
  return undefined;
}

function indexIn(kind: 'columns' | 'rows', name: string): number | undefined {
  if (kind === 'columns') return /^[A-Z]$/iu.test(name) ? columnOf(name) : undefined;
  return /^[1-9]\d?$/u.test(name) ? Number(name) - 1 : undefined;
}

function columnOf(letter = ''): number {
  return letter.toUpperCase().charCodeAt(0) - 'A'.charCodeAt(0);
}

/** From the key to its value, where both stand in one file. */
function spanning(from: Place, to: Place): Place {
  return from.file === to.file ? { ...from, end: Math.max(from.end, to.end) } : from;
}
