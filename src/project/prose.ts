import type { Heading, Nodes, RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { attributeMap } from './attributes.ts';
import { type Directive, isDirective, isListReference, TEXT_REFERENCES } from './directives.ts';
import { mapOf, readWhole, type Value } from './grammar.ts';
import { optional } from './keys.ts';
import { childrenOf, everyNode, placeOf } from './markdown.ts';
import type { Picture, Prose, Reference } from './model.ts';
import { picturePlace } from './pictures.ts';
import type { Reader } from './reader.ts';
import type { Schema } from './schema.ts';
import { type At, type Place, type SourceFile, textAt } from './source.ts';

/** What a stretch of Markdown names, shows and says. `also` are nodes that belong to it but stand elsewhere: a heading. */
export function readProse(
  nodes: readonly RootContent[],
  also: readonly RootContent[],
  file: SourceFile,
  reader: Reader,
): Prose {
  const references: Reference[] = [];
  const pictures: Picture[] = [];
  const texts: At<string>[] = [];
  for (const root of [...also, ...nodes]) {
    const unseen = unseenIn(root);
    checkLists(root, file, reader);
    for (const node of everyNode(root)) {
      if (node.type === 'text' && node.position) texts.push(run(placeOf(node, file)));
      if (node.type === 'image' && !unseen.has(node)) {
        const path = { value: node.url, at: picturePlace(node, file) };
        pictures.push({ path, alternative: node.alt?.trim() ?? '', at: placeOf(node, file) });
      }
      const reference = isDirective(node) ? readReference(node, file, reader) : undefined;
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
function checkLists(root: RootContent, file: SourceFile, { report }: Reader): void {
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

const asWritten: Value<At<string>> = {
  schema: {},
  read: (node) => (node.kind === 'text' ? { value: node.text, at: node.at } : undefined),
};

const DRAWING = mapOf('{of=box view=flat}', {
  of: optional(asWritten, 'A piece, or a panel of one.'),
  view: optional(asWritten, 'What is drawn of it: one of those below.'),
});

export const DRAWING_SCHEMA: Schema = DRAWING.schema;

/** The directives that have a name in brackets take no attributes. */
const NO_ATTRIBUTES = mapOf('nothing', {});

function readReference(node: Directive, file: SourceFile, reader: Reader): Reference | undefined {
  const map = attributeMap(node, file);
  const spot = { key: `:${node.name}`, at: map.at };
  if (node.type === 'leafDirective') {
    const { of: name, view } = readWhole(DRAWING, map, spot, reader);
    if (name?.value) return { kind: 'drawing', name, ...(view && { view }) };
    const expected = 'the name of a piece in it, such as ::drawing{of=box}';
    const facts = { key: 'a drawing', expected, actual: textAt(map.at) };
    reader.report({ rule: 'unexpected-value', at: map.at, facts });
    return undefined;
  }
  NO_ATTRIBUTES.read(map, spot, reader);
  const kind = TEXT_REFERENCES.find((each) => each === node.name);
  if (node.type !== 'textDirective' || !kind) return undefined;
  return { kind, name: { value: plainText(node).trim(), at: insidePlace(node, file) } };
}

/** Where what a node holds stands: the words of a heading, the name in a directive's brackets. */
export function insidePlace(node: Directive | Heading, file: SourceFile): Place {
  const whole = placeOf(node, file);
  const children = childrenOf(node);
  const [first, last] = [children[0], children.at(-1)];
  if (!first || !last) return whole;
  return { file, start: placeOf(first, file, whole).start, end: placeOf(last, file, whole).end };
}
