import { nameRemedy, nearestName } from '../../project/nearest.ts';
import type { Cell } from '../../project/net-as-written.ts';
import { everyProse } from '../../project/prose/prose.ts';
import { partIn } from '../../project/ref.ts';
import { columnName } from '../../shape/cells.ts';
import { partNames } from '../part-names.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { quote } from '../words.ts';

type Facts = UnknownName | UnknownCell;

export const unknownReference: Rule<Facts> = {
  severity: 'error',
  summary: 'Every piece, panel, stock and shared value that is named exists.',
  why: 'A piece stuck on something that is not in the sheet, or a step that uses a piece’s old name: nobody following the sheet can find it.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: cart }',
    blames: 'cart',
  },
  passes: { with: 'on: card', insteadOf: 'on: cart' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const { of } of everyProse(project).flatMap(({ references }) => references)) {
      const { piece } = of.value;
      const part = partIn(of);
      const among = partNames(shapes, piece);
      if (!part || among.length === 0 || among.includes(part.value)) continue;
      yield { at: part.at, facts: { what: 'panel', name: part.value, of: piece, among } };
    }
  },
  say: (facts) => ('what' in facts ? sayName(facts) : sayCell(facts)),
};

/** A name that isn't there. */
type UnknownName = {
  /** The kind of thing: `piece`, `stock`, `panel`. */
  readonly what: string;
  readonly name: string;
  /** The names that are there. */
  readonly among: readonly string[];
  /** The piece that hasn't it, and the layer that was to lie on it. */
  readonly of?: string;
  readonly layer?: string;
};

/** What `slit`, `panels` and the like name in the grid that a piece's score lines make. */
type UnknownCell = {
  readonly piece: string;
  /** The last column and row there are. */
  readonly last: Cell;
  readonly wrong: WrongCell;
};

type WrongCell =
  | { readonly kind: 'no cell' | 'trimmed off'; readonly key: string; readonly name: string }
  | {
      readonly kind: 'no panel';
      readonly key: string;
      readonly name: string;
      readonly among: readonly string[];
    }
  | {
      readonly kind: 'cell outside' | 'named already' | 'named and trimmed';
      readonly cell: string;
      readonly name: string;
    }
  | { readonly kind: 'glued to itself'; readonly name: string }
  /** A cell that an angled line cuts up, and its parts. */
  | {
      readonly kind: 'in parts';
      readonly key: string;
      readonly name: string;
      readonly parts: readonly string[];
    }
  | { readonly kind: 'not beside'; readonly key: string; readonly cells: readonly [string, string] }
  | { readonly kind: 'joins trimmed'; readonly line: string; readonly name: string }
  /** The score line behind a column or row, from 0, and whether it is there, but runs through fewer of the others. */
  | {
      readonly kind: 'no line';
      readonly key: string;
      readonly between: 'columns' | 'rows';
      readonly line: number;
      readonly isShort: boolean;
    };

/** A column and a row. */
const CELL = /^[A-Z]\d{1,2}$/u;

function sayName({ what, name, among, of, layer }: UnknownName): Words {
  const has = of === undefined ? `there is no ${what}` : `${of} has no ${what}`;
  if (layer === undefined) {
    const isSupply = what === 'stamp' || what === 'ink';
    const message = `${has} ${quote(name)}${isSupply ? ' among the supplies' : ''}`;
    return { message, remedy: isSupply ? supplyRemedy(name, what, among) : nameRemedy(name, among) };
  }
  const message = `${layer} lies on ${of}.${name}, but ${has} ${quote(name)}`;
  // One cell is no misspelling of another.
  const cells = CELL.test(name) && `write one of: ${among.map((each) => `${of}.${each}`).join(', ')}`;
  return { message, remedy: cells || nameRemedy(name, among, `${of}.`) };
}

/** A supply may be named by any word that tells it apart. */
function supplyRemedy(name: string, kind: string, among: readonly string[]): string {
  if (among.length === 0) return `write it there: { item: ${name}, kind: ${kind} }`;
  const word = nearestName(
    name,
    among.flatMap((item) => item.split(' ')),
  );
  return word === undefined ? nameRemedy(name, among) : `write "${word}"`;
}

function sayCell({ piece, last, wrong }: UnknownCell): Words {
  const extent = `name one of the columns A to ${columnName(last.column)} and the rows 1 to ${last.row + 1}, which its score lines make`;
  switch (wrong.kind) {
    case 'no cell':
      return { message: `${wrong.key} names ${wrong.name}, but ${piece} has no such cell`, remedy: extent };
    case 'no panel':
      return {
        message: `${wrong.key} names ${wrong.name}, but ${piece} has no such panel`,
        remedy: nameRemedy(wrong.name, wrong.among),
      };
    case 'cell outside':
      return {
        message: `${wrong.name} is ${wrong.cell}, which ${piece} doesn't have`,
        remedy: extent,
      };
    case 'named already':
      return {
        message: `${wrong.cell} of ${piece} is named ${wrong.name} already`,
        remedy: 'give each panel one name',
      };
    case 'in parts':
      return {
        message: `${wrong.key} names ${wrong.name} of ${piece}, which a score line at an angle cuts up`,
        remedy: `name ${wrong.parts.join(' or ')}`,
      };
    case 'not beside':
      return {
        message: `${wrong.key}: ${wrong.cells.join(' and ')} of ${piece} have no line between them`,
        remedy: 'name two cells side by side, such as B1|B2',
      };
    case 'joins trimmed':
      return {
        message: `with no line at ${wrong.line}, ${piece} would go on into ${wrong.name}, which is trimmed off`,
        remedy: `take ${wrong.line} out of folds, or ${wrong.name} out of trim`,
      };
    case 'trimmed off':
      return {
        message: `${wrong.key} names ${wrong.name} of ${piece}, which is trimmed off`,
        remedy: `take ${wrong.name} out of trim, or out of ${wrong.key}`,
      };
    case 'named and trimmed':
      return {
        message: `${wrong.name} of ${piece} is ${wrong.cell}, which is trimmed off`,
        remedy: `take ${wrong.cell} out of trim, or ${wrong.name} out of panels`,
      };
    case 'glued to itself':
      return {
        message: `glue sticks ${wrong.name} of ${piece} to itself`,
        remedy: 'name the panel that it is stuck to after the colon',
      };
    case 'no line':
      return { message: `${wrong.key}: ${sayLine(piece, last, wrong)}`, remedy: extent };
  }
}

function sayLine(
  piece: string,
  last: Cell,
  { between, line, isShort }: Extract<WrongCell, { readonly kind: 'no line' }>,
): string {
  const [before, behind] = [line, line + 1].map((index) =>
    between === 'columns' ? columnName(index) : `${index + 1}`,
  );
  if (!isShort) return `${piece} has no score line between ${before} and ${behind}`;
  const through = between === 'columns' ? `${last.row + 1} rows` : `${last.column + 1} columns`;
  return `the line ${before}|${behind} of ${piece} runs through ${through} only`;
}
