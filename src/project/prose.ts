import type { Heading, Nodes, RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { type Directive, isDirective, TEXT_REFERENCES } from './directives.ts';
import type { Fault } from './fault.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import { childrenOf, everyNode, placeOf } from './markdown.ts';
import type { Picture, Prose, Reference } from './model.ts';
import { picturePlace } from './pictures.ts';
import type { At, Place, SourceFile } from './source.ts';

/** What a stretch of Markdown names, shows and says. `also` are nodes that belong to it but stand elsewhere: a heading. */
export function readProse(
  nodes: readonly RootContent[],
  also: readonly RootContent[],
  file: SourceFile,
  report: (fault: Fault) => void,
): Prose {
  const references: Reference[] = [];
  const pictures: Picture[] = [];
  const texts: At<string>[] = [];
  for (const root of [...also, ...nodes]) {
    const unseen = unseenIn(root);
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

/** A run as it stands in the file, so that an offset in it is an offset in the file. */
function run(at: Place): At<string> {
  return { value: at.file.text.slice(at.start, at.end), at };
}

function readReference(
  node: Directive,
  file: SourceFile,
  report: (fault: Fault) => void,
): Reference | undefined {
  const attributes = Object.fromEntries(
    Object.entries(node.attributes ?? {}).map(([key, value]) => [key, value ?? '']),
  );
  if (node.type === 'leafDirective') {
    checkAttributes(node, KNOWN_KEYS.drawing, file, report);
    const at = attributePlace(node, 'of', file);
    if (attributes.of) return { kind: 'drawing', name: { value: attributes.of, at }, attributes };
    const whole = placeOf(node, file);
    const expected = 'the name of a piece in it, such as ::drawing{of=box}';
    const actual = file.text.slice(whole.start, whole.end);
    report({ kind: 'unexpected-value', key: 'a drawing', expected, actual, at: whole });
    return undefined;
  }
  checkAttributes(node, [], file, report);
  const kind = TEXT_REFERENCES.find((each) => each === node.name);
  if (node.type !== 'textDirective' || !kind) return undefined;
  return { kind, name: { value: plainText(node).trim(), at: insidePlace(node, file) }, attributes };
}

export function checkAttributes(
  node: Directive,
  known: readonly string[],
  file: SourceFile,
  report: (fault: Fault) => void,
): void {
  for (const key of Object.keys(node.attributes ?? {})) {
    if (known.includes(key)) continue;
    const at = attributePlace(node, key, file, 'key');
    report({ kind: 'unknown-key', key, known, where: `:${node.name}`, at });
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
  const found = new RegExp(String.raw`(?<=[{\s])${escaped}(?:\s*=\s*["']?([^\s"'}]+))?`, 'u').exec(
    source.slice(Math.max(braces, 0)),
  );
  if (!found) return whole;
  const start = whole.start + Math.max(braces, 0) + found.index;
  const end = start + found[0].length;
  if (part === 'key') return { file, start, end: start + key.length };
  return found[1] === undefined ? { file, start, end } : { file, start: end - found[1].length, end };
}

/** Where what a node holds stands: the words of a heading, the name in a directive's brackets. */
export function insidePlace(node: Directive | Heading, file: SourceFile): Place {
  const whole = placeOf(node, file);
  const children = childrenOf(node);
  const [first, last] = [children[0], children.at(-1)];
  if (!first || !last) return whole;
  return { file, start: placeOf(first, file, whole).start, end: placeOf(last, file, whole).end };
}
