import type { Paragraph, Parents, PhrasingContent, Root, RootContent, Text } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import type { Finding } from '../finding.ts';
import { type Place, type SourceFile, textAt } from '../source.ts';
import { textNode, type YamlMap } from '../yaml/yaml-node.ts';
import { placeOf, rewrite, sourceOf } from './markdown.ts';
import { type ReferenceKind, TEXT_REFERENCES } from './reference.ts';

export type Directive = ContainerDirective | LeafDirective | TextDirective;

/** The directives a sheet may use round a few paragraphs, and in a line. */
const CONTAINERS: readonly string[] = ['tip', 'caution', 'host'];
const IN_LINES: readonly string[] = TEXT_REFERENCES;

/** Those that are answered with a list and not within a line. */
const LISTS: readonly string[] = ['trims', 'assembly'] satisfies ReferenceKind[];

export function isListReference(name: string): boolean {
  return LISTS.includes(name);
}

export function isDirective(node: { readonly type: string }): node is Directive {
  return ['containerDirective', 'leafDirective', 'textDirective'].includes(node.type);
}

/**
 * Turns what merely looks like a directive (`3:15`, `:smile:`, `::note`) back into the text that was typed, and
 * joins it with the text beside it. One that was meant is reported.
 */
export function restoreText(root: Root, file: SourceFile, report: (finding: Finding) => void): void {
  rewrite(root, (node) => {
    if (node.type === 'text') reportInLine(node, file, report);
    if (!isDirective(node) || isOurs(node)) return undefined;
    const meant = readMeant(node, file);
    if (meant) report(meant);
    if (node.type === 'textDirective') return [typed(sourceOf(node, file), node)];
    if (node.type === 'leafDirective') return [paragraph(typed(sourceOf(node, file), node), node)];
    return withFences(node, file);
  });
  joinTexts(root);
}

/** One of our text directives always has something in brackets, except `:step`, which has attributes. */
function isOurs(node: Directive): boolean {
  if (node.type === 'containerDirective') return CONTAINERS.includes(node.name);
  if (node.type === 'leafDirective') return node.name === 'drawing';
  if (node.name === 'step') return Object.keys(node.attributes ?? {}).length > 0;
  return IN_LINES.includes(node.name) && node.children.length > 0;
}

/** How each directive is written, by its name. */
const FORMS: Readonly<Record<string, string>> = Object.fromEntries([
  ...TEXT_REFERENCES.map((name) => [name, `:${name}[…]`] as const),
  ['step', ':step{minutes=…}'],
  ['drawing', '::drawing{of=…}'],
  ...CONTAINERS.map((name) => [name, `:::${name}`] as const),
]);

/** As it is written, up to the end of its line: the name, then what it has in brackets and in braces. */
const WRITTEN = /^:+[\w-]+(?:\[[^\]\n]*\])?(?:\{[^}\n]*\})?/u;

/** One of ours with a space before its brackets: `:piece [mat]`. */
const SPACED = new RegExp(
  `^:(?:${[...IN_LINES, 'step'].join('|')})[ \\t]+(?:\\[[^\\]\\n]*\\]|\\{[^}\\n]*\\})`,
  'u',
);

/** The finding of a directive that was meant and is none; undefined of words with a colon before them: `3:15`, `:smile:`. */
function readMeant(node: Directive, file: SourceFile): Finding | undefined {
  const { start } = placeOf(node, file);
  const [joined = ''] = WRITTEN.exec(sourceOf(node, file)) ?? [];
  const written = SPACED.exec(file.text.slice(start))?.[0] ?? joined;
  const followsWord = /[\p{L}\p{N}]/u.test(file.text.charAt(start - 1));
  if (node.type === 'textDirective' && (followsWord || !/[[{]/u.test(written))) return undefined;
  return findUnknown(written, node.name, { file, start, end: start + written.length });
}

/** Reports in a line of text what only stands on a line of its own: `Fold it. ::drawing{of=box}`. */
function reportInLine(node: Text, file: SourceFile, report: (finding: Finding) => void): void {
  const whole = placeOf(node, file);
  for (const { 0: written, 1: name = '', index } of textAt(whole).matchAll(
    /(?<![:\w])::+([a-z][\w-]*)(?:\[[^\]\n]*\]|\{[^}\n]*\})/gu,
  )) {
    const start = whole.start + index;
    report(findUnknown(written, name, { file, start, end: start + written.length }));
  }
}

function findUnknown(written: string, name: string, at: Place): Finding<'unknown-directive'> {
  return { rule: 'unknown-directive', at, facts: { written, name, forms: FORMS } };
}

/** The fences of an unknown container become paragraphs; what stands between stays what it is. */
function withFences(node: ContainerDirective, file: SourceFile): RootContent[] {
  const source = sourceOf(node, file);
  const [opening = ''] = source.split(/\r\n|\r|\n/u);
  const closing = /(?:\r\n|\r|\n)[ \t>]*(:{3,})[ \t]*$/u.exec(source)?.[1];
  const inside = node.children.filter((child) => !isLabel(child));
  const first = paragraph(typed(opening.trimEnd(), node), node);
  const last = closing === undefined ? [] : [paragraph(typed(closing, node), node)];
  return [first, ...inside, ...last];
}

function isLabel(node: RootContent): boolean {
  return node.type === 'paragraph' && node.data?.directiveLabel === true;
}

function typed(value: string, { position }: Directive): Text {
  return { type: 'text', value, ...(position && { position }) };
}

function paragraph(text: Text, { position }: Directive): Paragraph {
  return { type: 'paragraph', children: [text], ...(position && { position }) };
}

/** Joins texts that stand side by side, so that each run of text is one node. */
function joinTexts(parent: Parents): void {
  const joined: RootContent[] = [];
  for (const child of parent.children) {
    const before = joined.at(-1);
    if ('children' in child) joinTexts(child);
    if (child.type === 'text' && before?.type === 'text') joined[joined.length - 1] = join(before, child);
    else joined.push(child);
  }
  parent.children = joined as PhrasingContent[] as typeof parent.children;
}

function join(before: Text, after: Text): Text {
  const [start, end] = [before.position?.start, after.position?.end];
  return {
    type: 'text',
    value: before.value + after.value,
    ...(start && end && { position: { start, end } }),
  };
}

/** The attributes of a directive as a map like any other; one without a value is an empty text. */
export function attributeMap(node: Directive, file: SourceFile): YamlMap {
  const entries = Object.entries(node.attributes ?? {}).map(([key, value]) => ({
    key: textNode(key, attributePlace(node, key, file, 'key')),
    value: textNode(value ?? '', attributePlace(node, key, file, 'value')),
  }));
  return { kind: 'map', entries: [...entries, ...passedOver(node, file)], at: placeOf(node, file) };
}

/** The one name that the parser of directives cannot keep, being that of every object's prototype. */
function passedOver(node: Directive, file: SourceFile): YamlMap['entries'] {
  const at = attributePlace(node, '__proto__', file, 'key');
  return textAt(at) === '__proto__' ? [{ key: textNode('__proto__', at), value: textNode('', at) }] : [];
}

/** Where an attribute's value stands (or its key, where it has none or that is asked for). */
function attributePlace(node: Directive, key: string, file: SourceFile, part: 'key' | 'value'): Place {
  const whole = placeOf(node, file);
  const source = sourceOf(node, file);
  const braces = Math.max(source.lastIndexOf('{'), 0);
  const escaped = key.replace(/[^\w-]/gu, '\\$&');
  const value = String.raw`"([^"]+)"|'([^']+)'|([^\s"'}]+)|""|''`;
  const attribute = new RegExp(String.raw`(?<=[{\s])(${escaped})(?:\s*=\s*(?:${value}))?`, 'du');
  const [all, ofKey, ...ofValue] = attribute.exec(source.slice(braces))?.indices ?? [];
  const found = part === 'key' ? ofKey : (ofValue.find((each) => each !== undefined) ?? all);
  if (!found) return whole;
  const opening = whole.start + braces;
  return { file, start: opening + found[0], end: opening + found[1] };
}
