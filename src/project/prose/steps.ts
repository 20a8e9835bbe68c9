import type { FootnoteDefinition, Heading, Nodes, PhrasingContent, Root, RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { toString as plainText } from 'mdast-util-to-string';
import { made, type Schema, sectionOf, taken, type Value } from '../grammar/grammar.ts';
import { listed, optional, plainly } from '../grammar/keys.ts';
import { readValue } from '../grammar/read-value.ts';
import type { Reader } from '../grammar/reader.ts';
import { asMatch, asMinutes, asText } from '../grammar/values.ts';
import type { Picture, Project, Prose, Step } from '../model.ts';
import { type Ref, readRef } from '../ref.ts';
import { type At, type Place, type SourceFile, textAt } from '../source.ts';
import { attributeMap, type Directive, isDirective, isListReference } from './directives.ts';
import { childrenOf, everyNode, placeOf, rewrite } from './markdown.ts';
import { picturePlace } from './pictures.ts';
import { type Reference, TEXT_REFERENCES } from './reference.ts';

/** A word alone says yes. */
const asSet = asMatch('yes or no', /^(?:(|yes)|no)$/u, ([, yes]) => yes !== undefined);

/** Names in a row with commas between, each with its place. */
const asNames: Value<readonly At<string>[]> = made(asText, ({ value, at }) =>
  [...value.matchAll(/[^,\s](?:[^,]*[^,\s])?/gu)].map(({ 0: name, index }) => ({
    value: name,
    at: { ...at, start: at.start + index, end: at.start + index + name.length },
  })),
);

const STEP = sectionOf('{minutes=10}', {
  minutes: optional(asMinutes, 'How long the step takes, in minutes; or in hours: `1h30`.'),
  ahead: plainly(asSet, 'no', 'It is done before the session.'),
  uses: listed(asNames, 'What is taken up in it, in order: `uses="score board, bone folder"`.'),
  dry: optional(asMinutes, 'How long it then waits, for ink or glue: `10`, `12h`.'),
});

export const STEP_SCHEMA: Schema = STEP.schema;

/** Reads an introduction, and a step for every `##` heading. */
export function readSteps(
  root: Root,
  file: SourceFile,
  reader: Reader,
): Pick<Project, 'introduction' | 'steps'> {
  const stray: TextDirective[] = [];
  const settings = new Map<Heading, TextDirective>();
  takeSettings(root, settings, stray);
  for (const node of stray) {
    reportMisfit('step off its heading', placeOf(node, file), reader);
  }
  const [before, ...after] = split(root);
  if (after.length + stray.length === 0) reportNoSteps(before?.nodes ?? [], file, reader);
  return {
    introduction: readProse(before?.nodes ?? [], [], file, reader),
    steps: after.flatMap(({ heading, nodes }) =>
      heading ? [readStep(heading, settings.get(heading), nodes, file, reader)] : [],
    ),
  };
}

/** Says where headings of another level were meant to be steps. */
function reportNoSteps(nodes: readonly RootContent[], file: SourceFile, { report }: Reader): void {
  const heading = nodes.find((node) => node.type === 'heading');
  if (!heading) return;
  const facts = { title: plainText(heading).trim(), depth: heading.depth };
  report({ rule: 'no-steps', at: placeOf(heading, file), facts });
}

function reportMisfit(
  misfit: 'step off its heading' | 'heading without words' | 'list in a line' | 'drawing of nothing',
  at: Place,
  { report }: Reader,
): void {
  report({ rule: 'unexpected-value', at, facts: { misfit, actual: textAt(at) } });
}

/** Takes every `:step` off the tree: those on a step's heading count, the others are strays. */
function takeSettings(root: Root, settings: Map<Heading, TextDirective>, stray: TextDirective[]): void {
  rewrite(root, (node, parent) => {
    if (node.type !== 'textDirective' || node.name !== 'step') return undefined;
    const isOnStep = parent.type === 'heading' && parent.depth === 2 && root.children.includes(parent);
    if (isOnStep && !settings.has(parent)) settings.set(parent, node);
    else stray.push(node);
    return [];
  });
  for (const heading of settings.keys()) trimEnd(heading.children);
}

function trimEnd(children: PhrasingContent[]): void {
  const last = children.at(-1);
  if (last?.type !== 'text') return;
  last.value = last.value.trimEnd();
  if (last.value === '') children.pop();
}

type Section = { readonly heading?: Heading; readonly nodes: RootContent[] };

function split(root: Root): Section[] {
  const sections: Section[] = [{ nodes: [] }];
  const notes: FootnoteDefinition[] = [];
  for (const node of root.children) {
    if (node.type === 'heading' && node.depth === 2) sections.push({ heading: node, nodes: [] });
    else if (node.type === 'footnoteDefinition') notes.push(node);
    else sections.at(-1)?.nodes.push(node);
  }
  for (const section of sections) section.nodes.push(...notesOf(section, notes));
  return sections;
}

/** A footnote goes where it is called, wherever it is written. */
function notesOf({ heading, nodes }: Section, notes: readonly FootnoteDefinition[]): FootnoteDefinition[] {
  const called = new Set<string>();
  for (const root of [...(heading ? [heading] : []), ...nodes]) {
    for (const node of everyNode(root)) if (node.type === 'footnoteReference') called.add(node.identifier);
  }
  return notes.filter(({ identifier }) => called.has(identifier));
}

function readStep(
  heading: Heading,
  settings: TextDirective | undefined,
  nodes: readonly RootContent[],
  file: SourceFile,
  reader: Reader,
): Step {
  const title = { value: plainText(heading).trim(), at: insidePlace(heading, file) };
  if (title.value === '') reportMisfit('heading without words', title.at, reader);
  const attributes = settings ? attributeMap(settings, file) : ({ kind: 'nothing', at: title.at } as const);
  const step = readValue(STEP, attributes, { key: ':step', at: title.at }, reader);
  return {
    title,
    heading: heading.children,
    ...step,
    uses: step.uses.flat(),
    prose: readProse(nodes, heading.children, file, reader),
  };
}

/** What a stretch of Markdown names, shows and says. `also` are nodes that belong to it but stand elsewhere: a heading. */
function readProse(
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
  const named = new Set(references.map(({ of }) => of.at.start));
  return { nodes, references, pictures, texts: texts.filter(({ at }) => !named.has(at.start)) };
}

/** What is for the demonstrator alone: its pictures are shown nowhere, and must not be published. */
function unseenIn(root: RootContent): ReadonlySet<Nodes> {
  const hosts = [...everyNode(root)].filter((node) => isDirective(node) && node.name === 'host');
  return new Set(hosts.flatMap((host) => [...everyNode(host)]));
}

/** Reports a directive that is answered with a list where no list can stand. */
function checkLists(root: RootContent, file: SourceFile, reader: Reader): void {
  const nodes = [...everyNode(root)];
  const inParagraphs = new Set<Nodes>(
    nodes.flatMap((node) => (node.type === 'paragraph' ? node.children : [])),
  );
  for (const node of nodes) {
    if (node.type !== 'textDirective' || !isListReference(node.name) || inParagraphs.has(node)) continue;
    reportMisfit('list in a line', placeOf(node, file), reader);
  }
}

/** A run as it stands in the file, so that an offset in it is an offset in the file. */
function run(at: Place): At<string> {
  return { value: textAt(at), at };
}

const asWritten: Value<At<string>> = taken({}, ({ node }) =>
  node.kind === 'text' ? { value: node.text, at: node.at } : undefined,
);

const DRAWING = sectionOf('{of=box view=flat}', {
  of: optional(asWritten, 'A piece, or a panel of one.'),
  view: optional(asWritten, 'What is drawn of it: one of those below.'),
});

export const DRAWING_SCHEMA: Schema = DRAWING.schema;

/** The directives that have a name in brackets take no attributes. */
const NO_ATTRIBUTES = sectionOf('nothing', {});

function readReference(node: Directive, file: SourceFile, reader: Reader): Reference | undefined {
  const map = attributeMap(node, file);
  const spot = { key: `:${node.name}`, at: map.at };
  if (node.type === 'leafDirective') {
    const { of, view } = readValue(DRAWING, map, spot, reader);
    if (of?.value) return { kind: 'drawing', of: refIn(of), ...(view && { view }) };
    reportMisfit('drawing of nothing', map.at, reader);
    return undefined;
  }
  readValue(NO_ATTRIBUTES, map, spot, reader);
  const kind = TEXT_REFERENCES.find((each) => each === node.name);
  if (node.type !== 'textDirective' || !kind) return undefined;
  return { kind, of: refIn({ value: plainText(node).trim(), at: insidePlace(node, file) }) };
}

function refIn({ value, at }: At<string>): At<Ref> {
  return { value: readRef(value), at };
}

/** Where what a node holds stands: the words of a heading, the name in a directive's brackets. */
function insidePlace(node: Directive | Heading, file: SourceFile): Place {
  const whole = placeOf(node, file);
  const children = childrenOf(node);
  const [first, last] = [children[0], children.at(-1)];
  if (!first || !last) return whole;
  return { file, start: placeOf(first, file, whole).start, end: placeOf(last, file, whole).end };
}
