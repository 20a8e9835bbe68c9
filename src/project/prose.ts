import type { Heading, Nodes, RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { type Directive, isDirective, isListReference, TEXT_REFERENCES } from './directives.ts';
import type { Finding } from './finding.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import { childrenOf, everyNode, placeOf } from './markdown.ts';
import type { Picture, Prose, Reference } from './model.ts';
import { present } from './optional.ts';
import { picturePlace } from './pictures.ts';
import type { At, Place, SourceFile } from './source.ts';

/** What a stretch of Markdown names, shows and says. `also` are nodes that belong to it but stand elsewhere: a heading. */
export function readProse(
  nodes: readonly RootContent[],
  also: readonly RootContent[],
  file: SourceFile,
  report: (finding: Finding) => void,
): Prose {
  const references: Reference[] = [];
  const pictures: Picture[] = [];
  const texts: At<string>[] = [];
  for (const root of [...also, ...nodes]) {
    const unseen = unseenIn(root);
    checkLists(root, file, report);
    for (const node of everyNode(root)) {
      if (node.type === 'text' && node.position) texts.push(run(placeOf(node, file)));
      if (node.type === 'image' && !unseen.has(node)) {
        const path = { value: node.url, at: picturePlace(node, file) };
        pictures.push({ path, alternative: node.alt?.trim() ?? '', at: placeOf(node, file) });
      }
      const reference = isDirective(node) ? readReference(node, file, report) : undefined;
      if (reference) references.push(reference);
    }
  }
  const named = new Set(references.map(({ name }) => name.at.start));
  return { nodes, references, pictures, texts: texts.filter(({ at }) => !named.has(at.start)) };
}

/** What is for the demonstrator alone: its pictures are shown nowhere, and must not be published. */
function unseenIn(root: RootContent): ReadonlySet<Nodes> {
  const hosts = [...everyNode(root)].filter((node) => isDirective(node) && node.name === 'host');
  return new Set(hosts.flatMap((host) => [...everyNode(host)]));
}

/** Reports a directive that is answered with a list where no list can stand. */
function checkLists(root: RootContent, file: SourceFile, report: (finding: Finding) => void): void {
  const nodes = [...everyNode(root)];
  const inParagraphs = new Set<Nodes>(
    nodes.flatMap((node) => (node.type === 'paragraph' ? node.children : [])),
  );
  for (const node of nodes) {
    if (node.type !== 'textDirective' || !isListReference(node.name) || inParagraphs.has(node)) continue;
    const at = placeOf(node, file);
    const expected = 'to stand in a paragraph, not in a heading, a table or emphasized words';
    report({ rule: 'unexpected-value', at, facts: { key: `:${node.name}`, expected, actual: textAt(at) } });
  }
}

/** A run as it stands in the file, so that an offset in it is an offset in the file. */
function run(at: Place): At<string> {
  return { value: textAt(at), at };
}

function textAt({ file, start, end }: Place): string {
  return file.text.slice(start, end);
}

function readReference(
  node: Directive,
  file: SourceFile,
  report: (finding: Finding) => void,
): Reference | undefined {
  if (node.type === 'leafDirective') return readDrawing(node, file, report);
  checkAttributes(node, [], file, report);
  const kind = TEXT_REFERENCES.find((each) => each === node.name);
  if (node.type !== 'textDirective' || !kind) return undefined;
  return {
    kind,
    name: { value: plainText(node).trim(), at: insidePlace(node, file) },
    attributes: attributesOf(node),
  };
}

function readDrawing(
  node: Directive,
  file: SourceFile,
  report: (finding: Finding) => void,
): Reference | undefined {
  checkAttributes(node, KNOWN_KEYS.drawing, file, report);
  const attributes = attributesOf(node);
  const { of, view } = attributes;
  if (of) {
    const name = { value: of, at: attributePlace(node, 'of', file) };
    const written = view === undefined ? undefined : { value: view, at: attributePlace(node, 'view', file) };
    return { kind: 'drawing', name, attributes, ...present('view', written) };
  }
  const at = placeOf(node, file);
  const expected = 'the name of a piece in it, such as ::drawing{of=box}';
  report({ rule: 'unexpected-value', at, facts: { key: 'a drawing', expected, actual: textAt(at) } });
  return undefined;
}

function attributesOf(node: Directive): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(node.attributes ?? {}).map(([key, value]) => [key, value ?? '']));
}

export function checkAttributes(
  node: Directive,
  known: readonly string[],
  file: SourceFile,
  report: (finding: Finding) => void,
): void {
  for (const key of Object.keys(node.attributes ?? {})) {
    if (known.includes(key)) continue;
    const at = attributePlace(node, key, file, 'key');
    report({ rule: 'unknown-key', at, facts: { key, known, where: `:${node.name}` } });
  }
}

/** Where an attribute's value stands (or its key, where it has none or that is asked for). */
export function attributePlace(
  node: Directive,
  key: string,
  file: SourceFile,
  part: 'key' | 'value' = 'value',
): Place {
  const whole = placeOf(node, file);
  const source = file.text.slice(whole.start, whole.end);
  const braces = source.lastIndexOf('{');
  const escaped = key.replace(/[^\w-]/gu, '\\$&');
  const value = String.raw`"([^"]*)"|'([^']*)'|([^\s"'}]+)`;
  const found = new RegExp(String.raw`(?<=[{\s])${escaped}(?:\s*=\s*(?:${value}))?`, 'u').exec(
    source.slice(Math.max(braces, 0)),
  );
  if (!found) return whole;
  const start = whole.start + Math.max(braces, 0) + found.index;
  const end = start + found[0].length;
  if (part === 'key') return { file, start, end: start + key.length };
  const quoted = found[1] ?? found[2];
  const written = quoted ?? found[3] ?? '';
  if (written === '') return { file, start, end };
  const last = quoted === undefined ? end : end - 1;
  return { file, start: last - written.length, end: last };
}

/** Where what a node holds stands: the words of a heading, the name in a directive's brackets. */
export function insidePlace(node: Directive | Heading, file: SourceFile): Place {
  const whole = placeOf(node, file);
  const children = childrenOf(node);
  const [first, last] = [children[0], children.at(-1)];
  if (!first || !last) return whole;
  return { file, start: placeOf(first, file, whole).start, end: placeOf(last, file, whole).end };
}
