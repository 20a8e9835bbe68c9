import { roundDecimals } from '../measure/round.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { escapeHtml, withoutForbidden } from '../words/safe-html.ts';

/** What an element is given; an attribute that is undefined is left out. */
type SvgAttributes = Readonly<Record<string, string | number | undefined>>;

/** Printable ASCII but for `"`, `&`, `'`, `<` and `>`: most attributes are no more than that. */
const HARMLESS = /^[ !#-%(-;=?-~]*$/u;

/** A text as it may stand between tags or in an attribute. */
export function escapeText(text: string): string {
  return HARMLESS.test(text) ? text : escapeHtml(withoutForbidden(text));
}

/**
 * A number of millimeters, rounded to a thousandth.
 * @throws RangeError when it is not finite: a drawing with a hole in it must not leave the house.
 */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing cannot hold the coordinate ${value}`);
  return String(roundDecimals(value, 3));
}

/** One element; children are markup already. */
export function element(name: string, attributes: SvgAttributes, ...children: readonly string[]): string {
  let opening = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    opening += ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeText(value)}"`;
  }
  return children.length === 0 ? `${opening}/>` : `${opening}>${children.join('')}</${name}>`;
}

/** The data of a path through absolute points: `M0,0L10,0L10,5Z`. */
export function pathData(points: readonly Point2[], closed: boolean): string {
  let data = '';
  for (const { x, y } of points) data += `${data === '' ? 'M' : 'L'}${coordinate(x)},${coordinate(y)}`;
  return closed ? `${data}Z` : data;
}
