import { made, mapOf, turned, type Value, whereOf } from '../grammar/grammar.ts';
import { listed, optional, required } from '../grammar/keys.ts';
import { reportMissing } from '../grammar/reader.ts';
import { asLength, asMatch } from '../grammar/values.ts';
import {
  EDGES,
  type Edge,
  type FoldSetting,
  type GridCorner,
  type LineWord,
  type PatchName,
  type PatchPart,
  type ScoreGroup,
  type Slant,
  type Slit,
  type WrittenLine,
} from '../net-as-written.ts';
import type { At, Place } from '../source.ts';

/** `B3`: columns A, B, … from the left, rows 1, 2, … from the top; `C2 left` beside an angled line through it. */
export const asCell: Value<At<PatchName>> = asMatch(
  'a cell, such as B3',
  /^([A-Z])\s*(\d{1,2})(?:\s+(left|middle|right))?$/iu,
  ([, letter, digits, part]) => {
    const row = Number(digits) - 1;
    const cell = { column: columnOf(letter), row };
    return row < 0 ? undefined : { cell, ...(part && { part: part.toLowerCase() as PatchPart }) };
  },
);

/** `A|B 1-2` or `A|B 4`: between two columns, through rows; `1|2 A-C`: between two rows, through columns. */
export const asSlit: Value<Slit> = made(
  asMatch(
    'a score line and the cells it passes, such as A|B 1-2',
    /^(\w{1,2})\s*\|\s*(\w{1,2})\s+(\w{1,2})(?:\s*[-–]\s*(\w{1,2}))?$/u,
    ([text]) => {
      const line = readLine(text);
      if (!line || 'cells' in line || line.from === undefined || line.to === undefined) return undefined;
      return { ...line, from: line.from, to: line.to };
    },
  ),
  ({ value, at }) => ({ ...value, at }),
);

type FoldWords = Pick<FoldSetting, 'direction' | 'angle'>;

/** `valley 90`, `mountain` (90), `flat` (0), or `none` where there is no line. */
const asFold: Value<At<FoldWords>> = asMatch(
  'a fold, such as valley 90, mountain 45, flat or none',
  /^(mountain|valley|flat|none)(?:\s+(\d{1,3}(?:\.\d{1,4})?)\s*°?)?$/iu,
  ([, word, digits]) => {
    const direction = word?.toLowerCase() as LineWord;
    if (direction === 'flat' || direction === 'none')
      return digits === undefined ? { direction, angle: 0 } : undefined;
    const angle = Number(digits ?? 90);
    return angle > 0 && angle <= 180 ? { direction, angle } : undefined;
  },
);

/** The fold of the line that its key names. */
export const asFoldOfLine: Value<FoldSetting> = turned(asFold.schema, ({ spot, reader }) => {
  const line = readLine(spot.key);
  const form =
    'a score line between two neighbors, such as 1|2 or A|B, or what lies between two cells, such as B1|B2';
  const facts = { key: 'folds', expected: form, actual: spot.key };
  if (!line) reader.report({ rule: 'unexpected-value', at: spot.at, facts });
  const ofLine = ({ value, at }: At<FoldWords>): FoldSetting | undefined =>
    line && { line, ...value, at: spanning(spot.at, at) };
  return { value: made(asFold, ofLine) };
});

/** What a row of scores is measured from: an edge, or a corner from which a line runs to another one. */
const asStart: Value<At<Edge | GridCorner>> = asMatch(
  'left, right, top, bottom or a corner, such as corner B3',
  /^(?:(left|right|top|bottom)|corner\s+([A-Z])\s*([1-9]\d?)(?:\s+(top|bottom)\s+(left|right))?)$/iu,
  ([, edge, letter, digits, height, side]) =>
    EDGES.find((each) => each === edge?.toLowerCase()) ?? cornerOf(letter, digits, height, side),
);

/** `corner B3`, the top left one of cell B3, or `corner B3 bottom right`. */
const asCorner: Value<At<GridCorner>> = asMatch(
  'a corner of a cell, such as corner C2 or corner C2 bottom right',
  /^corner\s+([A-Z])\s*([1-9]\d?)(?:\s+(top|bottom)\s+(left|right))?$/iu,
  ([, letter, digits, height, side]) => cornerOf(letter, digits, height, side),
);

function cornerOf(letter?: string, digits?: string, height = 'top', side = 'left'): GridCorner {
  const cell = { column: columnOf(letter), row: Number(digits) - 1 };
  return { cell, upper: height.toLowerCase() === 'top', left: side.toLowerCase() === 'left' };
}

/** A row of scores from an edge, or one line at an angle. */
export const asScore: Value<ScoreGroup | Slant> = made(
  mapOf('{ from: left, at: [1, 4 1/2] }', {
    from: required(
      asStart,
      'The edge they are measured from: `left`, `right`, `top` or `bottom`. Or, for a line at an angle, the corner of a cell at which it begins: `corner B3` is the top left one of B3, `corner B3 bottom right` another.',
    ),
    at: listed(asLength, 'The positions, in rising order, as the hand goes along the board.'),
    to: optional(asCorner, 'The corner at which a line at an angle ends.'),
  }),
  ({ from, at, to }, { spot, reader }): ScoreGroup | Slant | undefined => {
    const isEdge = typeof from.value === 'string';
    const key = isEdge ? 'at' : 'to';
    const misplaced = isEdge ? to?.at : at[0]?.at;
    if (misplaced) {
      const facts = isEdge
        ? {
            key: 'to',
            expected: '"at:" and positions, since it is measured from an edge',
            actual: 'a corner',
          }
        : { key: 'at', expected: '"to:" and a corner, since it begins at one', actual: 'a position' };
      reader.report({ rule: 'unexpected-value', at: misplaced, facts });
      return undefined;
    }
    if (typeof from.value !== 'string' && to) return { from: { value: from.value, at: from.at }, to };
    if (typeof from.value === 'string' && at.length > 0)
      return { from: { value: from.value, at: from.at }, at };
    reportMissing({ key, where: whereOf(spot), isWritten: false }, spot.at, reader);
    return undefined;
  },
);

/** A line as people name it; undefined for what is none. */
function readLine(text: string): WrittenLine | undefined {
  const [, before = '', after = '', first, last = first] =
    /^(\w{1,2})\s*\|\s*(\w{1,2})(?:\s+(\w{1,2})(?:\s*[-–]\s*(\w{1,2}))?)?$/u.exec(text.trim()) ?? [];
  const line = lineBetween(before, after);
  if (line && first === undefined) return line;
  if (line && first !== undefined && last !== undefined) {
    const across = line.between === 'columns' ? 'rows' : 'columns';
    const [from, to] = [indexIn(across, first), indexIn(across, last)];
    return from === undefined || to === undefined || to < from ? undefined : { ...line, from, to };
  }
  const [one = '', other = '', ...more] = text.split('|').map((name) => name.trim());
  // Single letters and numbers name columns and rows, which those of a line follow each other.
  const isCell = (name: string): boolean => name.length > 1 && !/^\d+$/u.test(name);
  return more.length === 0 && isCell(one) && isCell(other) ? { cells: [one, other] } : undefined;
}

type LinePlace = Pick<Slit, 'between' | 'line'>;

function lineBetween(before: string, after: string): LinePlace | undefined {
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
