import type { Length, Unit } from '../measure/length.ts';
import { printDecimal, printLength, printNear, roundedSign } from '../measure/print.ts';
import { nextMark } from '../measure/round.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import { areAll, type Corner, type CornerName, namesOf } from '../project/corners.ts';
import { type Ref, writeName } from '../project/ref.ts';

/**
 * A length for a message, never rounded silently: `3 1/4 in`; `4.1 in` or `57 mm` where it was written so and no
 * ruler shows it; else `≈2 1/4 in`.
 */
export function sayLength(length: Length, unit: Unit): string {
  if (unit !== 'in' || roundedSign(length, 'in') === '') return printNear(length, unit);
  if (1000n % length.in('in').denominator === 0n) return `${printDecimal(length, 'in', 3)} in`;
  return roundedSign(length, 'mm') === '' ? printLength(length, 'mm') : printNear(length, unit);
}

/** How thick a paper is, as papers are sold: to a thousandth of an inch or a hundredth of a millimeter. */
export function sayCaliper(thickness: Length, unit: Unit): string {
  return unit === 'in' ? `${printDecimal(thickness, 'in', 3)} in` : `${printDecimal(thickness, 'mm', 2)} mm`;
}

/** What papers take up: up to the next fine mark of a ruler, for it is told where it is too much. */
export function sayThickness(thickness: Length, unit: Unit): string {
  const mark = nextMark(thickness, rulerUnit(unit), 'finest');
  return mark.equals(thickness) ? printNear(mark, unit) : `≈${printNear(mark, unit)}`;
}

/** `3 1/4 × 4 1/2 in`. */
export function saySize(size: Size, unit: Unit, say: typeof sayLength = sayLength): string {
  return sayLengths([size.width, size.height], unit, say);
}

/** Several lengths of one thing, the unit said once where it is the same: `3 1/2 × 1 × 4 3/4 in`. */
export function sayLengths(
  lengths: readonly Length[],
  unit: Unit,
  say: typeof sayLength = sayLength,
): string {
  const said = lengths.map((length) => say(length, unit));
  const [last, ...others] = new Set(said.map((each) => each.slice(each.lastIndexOf(' '))));
  // `less than` belongs to one length.
  if (last === undefined || others.length > 0 || said.some((each) => each.startsWith('less')))
    return said.join(' × ');
  return `${said.map((each) => each.slice(0, -last.length)).join(' × ')}${last}`;
}

const CORNER_WORDS: Readonly<Record<CornerName, string>> = {
  top: 'upper corners',
  bottom: 'lower corners',
  left: 'left corners',
  right: 'right corners',
  'top left': 'upper left corner',
  'top right': 'upper right corner',
  'bottom right': 'lower right corner',
  'bottom left': 'lower left corner',
};

/** `corners` of all of them, else `upper corners`, `upper left corner`. */
export function sayCorners(corners: readonly Corner[]): string {
  return areAll(corners) ? 'corners' : sayList(namesOf(corners).map((name) => CORNER_WORDS[name]));
}

/** `a circle`, `an oval`. */
export function sayOne(noun: string): string {
  return `${/^[aeiou]/u.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** `1 error`, `2 errors`, `1,200 errors`. */
export function sayCount(count: number, noun: string, nouns = `${noun}s`): string {
  return `${groupThousands(count)} ${count === 1 ? noun : nouns}`;
}

/** `1,200`. */
export function groupThousands(count: number): string {
  return count.toLocaleString('en-US');
}

/** `a`, `a and b`, `a, b and c`. */
export function sayList(words: readonly string[], last = 'and'): string {
  const final = words.at(-1) ?? '';
  return words.length < 2 ? final : `${words.slice(0, -1).join(', ')} ${last} ${final}`;
}

/** `box.A1`, `box.A1 and box.B1`: panels of one piece. */
export function sayPanels(piece: string, panels: readonly string[]): string {
  return sayList(panels.map((panel) => `${piece}.${panel}`));
}

/** `box.front`, `the inside of box.front`, `the back of mat`. */
export function sayRef(ref: Ref): string {
  const name = writeName(ref);
  return { outside: name, inside: `the inside of ${name}`, behind: `the back of ${name}` }[ref.face];
}

/** What a person wrote, between quotation marks and on one line; a long text is cut short. */
export function quote(text: string): string {
  const line = text.replace(/\s+/gu, ' ').trim();
  return `"${line.length > 60 ? `${line.slice(0, 57)}…` : line}"`;
}

/** `pieces`, `front` as `front`; `pieces`, `front`, `at` as `"at" of front`; what has no name by its key. */
export function sayPlace([key = '', name, ...inner]: readonly string[]): string {
  if (name !== undefined) return inner.length === 0 ? name : `${quote(inner.join(' '))} of ${name}`;
  if (key === 'frontmatter') return 'the head of the sheet';
  return key === 'supplies' ? 'a supply' : quote(key);
}
