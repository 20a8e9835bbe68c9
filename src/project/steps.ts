import type { FootnoteDefinition, Heading, PhrasingContent, Root, RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { toString as plainText } from 'mdast-util-to-string';
import { attributeMap } from './attributes.ts';
import { mapOf, readWhole } from './grammar.ts';
import { optional, plainly } from './keys.ts';
import { everyNode, placeOf, rewrite } from './markdown.ts';
import type { Project, Step } from './model.ts';
import { insidePlace, readProse } from './prose.ts';
import type { Reader } from './reader.ts';
import type { Schema } from './schema.ts';
import { type SourceFile, textAt } from './source.ts';
import { asMatch } from './values.ts';

const NO_TITLE = 'behind ## what is done in this step';

const asMinutes = asMatch('a whole number of minutes', /^[1-9]\d{0,3}$/u, ([digits]) => Number(digits));

/** A word alone says yes. */
const asSet = asMatch('yes or no', /^(?:(|yes)|no)$/u, ([, yes]) => yes !== undefined);

const STEP = mapOf('{minutes=10}', {
  minutes: optional(asMinutes, 'How long the step takes, in minutes.'),
  ahead: plainly(asSet, 'no', 'It is done before the session.'),
  dry: optional(asMinutes, 'How many minutes it then waits, for ink or glue.'),
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
    const expected = 'to stand once, on a ## heading';
    const at = placeOf(node, file);
    reader.report({ rule: 'unexpected-value', at, facts: { key: ':step', expected, actual: textAt(at) } });
  }
  const [before, ...after] = split(root);
  return {
    introduction: readProse(before?.nodes ?? [], [], file, reader),
    steps: after.flatMap(({ heading, nodes }) =>
      heading ? [readStep(heading, settings.get(heading), nodes, file, reader)] : [],
    ),
  };
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
  if (title.value === '') {
    const facts = { key: 'a heading', expected: NO_TITLE, actual: textAt(title.at) };
    reader.report({ rule: 'unexpected-value', at: title.at, facts });
  }
  return {
    title,
    heading: heading.children,
    ...readWhole(STEP, settings && attributeMap(settings, file), { key: ':step', at: title.at }, reader),
    prose: readProse(nodes, heading.children, file, reader),
  };
}
