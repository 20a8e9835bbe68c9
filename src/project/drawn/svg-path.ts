import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { Length, type Unit } from '../../measure/length.ts';
import { roundMillimeters } from '../../measure/round.ts';
import type { DrawingProblem } from './drawing-problem.ts';
import { type AsDrawn, alterationOf, isHidden, sheetAlteration } from './svg-style.ts';

/** The `d` of a drawing's path, and millimeters in a unit of it. */
export type SvgPath = { readonly data: string; readonly perUnit: number };

/** The only path of an SVG drawing. */
export function findSvgPath(svg: string): SvgPath | DrawingProblem {
  const elements = parseXml(svg);
  if ('kind' in elements) return elements;
  const root = elements.find(({ name }) => name === 'svg');
  if (!root) return { kind: 'no svg', what: 'it has no <svg>' };
  const scale = scaleOf(root.attributes);
  if ('kind' in scale) return scale;
  const path = onlyPath(root);
  return 'kind' in path ? path : { ...path, ...scale };
}

type XmlElement = AsDrawn & { readonly text: string; readonly children: readonly XmlElement[] };

/** The parser throws at some of what its validator lets pass: elements too deep, entities of other files. */
function parseXml(svg: string): readonly XmlElement[] | DrawingProblem {
  const valid = XMLValidator.validate(svg);
  if (valid !== true) return { kind: 'no svg', what: valid.err.msg };
  try {
    const parser = new XMLParser({ preserveOrder: true, ignoreAttributes: false, attributeNamePrefix: '' });
    return elementsIn(parser.parse(svg));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { kind: 'no svg', what: reason.replace('[SECURITY] ', '') };
  }
}

/** The parser gives each element as a map of its name to its children, its attributes beside it under `:@`. */
function elementsIn(parsed: unknown): readonly XmlElement[] {
  return nodesOf(parsed).flatMap((node): readonly XmlElement[] => {
    const name = Object.keys(node).find((key) => key !== ':@' && !/^[#?]/u.test(key));
    if (name === undefined) return [];
    const attributes = Object.entries(node[':@'] ?? {}).map(([key, value]) => [key, String(value)] as const);
    const text = nodesOf(node[name]).map((child) => child['#text'] ?? '');
    return [
      {
        name,
        attributes: Object.fromEntries(attributes),
        text: text.join(''),
        children: elementsIn(node[name]),
      },
    ];
  });
}

function nodesOf(parsed: unknown): readonly Readonly<Record<string, unknown>>[] {
  return Array.isArray(parsed) ? parsed : [];
}

/** Millimeters in a unit of the drawing. */
function scaleOf({
  width = '',
  height = '',
  viewBox = '',
}: XmlElement['attributes']): { readonly perUnit: number } | DrawingProblem {
  const [wide, high] = [lengthOf(width), lengthOf(height)];
  if (!wide) return unknownSide('width', width);
  if (!high) return unknownSide('height', height);
  const box = viewBox.trim().split(/[\s,]+/u);
  const [, , across = 0, down = 0] = box.map(Number);
  if (box.length !== 4 || !box.every((each) => NUMBER.test(each)) || !(across > 0 && down > 0))
    return { kind: 'no size', what: 'it has no viewBox of four numbers' };
  if (Math.max(across, down) > HUGE || Math.min(across, down) < 1 / HUGE)
    return { kind: 'no size', what: `its viewBox, "${viewBox}", is too large or too small` };
  const [perUnit, upright] = [wide.mm / across, high.mm / down];
  // A drawing that is not of its viewBox's shape is fitted into it by rules nobody has in mind.
  if (Math.abs(perUnit / upright - 1) > 0.001)
    return { kind: 'stretched', across: wide, down: roundMillimeters(across * upright, 1000) };
  return { perUnit };
}

/** A number in SVG. */
const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/iu;

/** No viewBox is so many units across. */
const HUGE = 1e6;

function unknownSide(side: 'width' | 'height', text: string): DrawingProblem {
  return {
    kind: 'no size',
    what: text ? `its ${side}, "${text}", is in no mm, cm or in` : `it has no ${side}`,
  };
}

function lengthOf(text: string): Length | undefined {
  const [, digits = '', unit] = /^\s*(\d{1,5}(?:\.\d{1,9})?)\s*(mm|cm|in)\s*$/u.exec(text) ?? [];
  if (unit === undefined) return undefined;
  const [whole = '', part = ''] = digits.split('.');
  const length = Length.of(BigInt(whole + part), 10n ** BigInt(part.length), unit as Unit);
  return length.sign > 0 ? length : undefined;
}

/** What draws nothing by itself. */
const SILENT: ReadonlySet<string> = new Set(['title', 'desc', 'metadata', 'defs', 'style']);

function onlyPath(root: XmlElement): { readonly data: string } | DrawingProblem {
  const sheet = stylesIn(root).flatMap(({ text }) => sheetAlteration(text) ?? []);
  if (sheet[0] !== undefined) return { kind: 'altered', what: 'style', by: sheet[0] };
  const paths: string[] = [];
  const open = [root];
  for (const element of open) {
    const { name, attributes, children } = element;
    if (SILENT.has(name) || name.includes(':') || isHidden(element)) continue;
    const by = alterationOf(element);
    if (by !== undefined) return { kind: 'altered', what: name, by };
    if (name === 'path') paths.push(attributes.d ?? '');
    else if (name === 'g' || element === root) for (const child of children) open.push(child);
    else return { kind: 'other element', what: name };
  }
  const [data] = paths;
  return data === undefined || paths.length > 1 ? { kind: 'paths', count: paths.length } : { data };
}

/** The style sheets in a drawing. */
function stylesIn(element: XmlElement): readonly XmlElement[] {
  return element.name === 'style' ? [element] : element.children.flatMap(stylesIn);
}
