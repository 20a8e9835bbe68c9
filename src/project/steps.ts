import type { FootnoteDefinition, Heading, PhrasingContent, Root, RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { toString as plainText } from 'mdast-util-to-string';
import type { Finding } from './finding.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import { everyNode, placeOf, rewrite } from './markdown.ts';
import type { Prose, Step } from './model.ts';
import { present } from './optional.ts';
import { attributePlace, checkAttributes, insidePlace, readProse } from './prose.ts';
import type { At, SourceFile } from './source.ts';

/** An introduction, and a step for every `##` heading. */
export type Parts = { readonly introduction: Prose; readonly steps: readonly Step[] };

const NO_TITLE = 'behind ## what is done in this step';

type Report = (finding: Finding) => void;

export function readSteps(root: Root, file: SourceFile, report: Report): Parts {
  const stray: TextDirective[] = [];
  const settings = new Map<Heading, TextDirective>();
  takeSettings(root, settings, stray);
  for (const node of stray) {
    const expected = 'to stand once, on a ## heading';
    const at = placeOf(node, file);
    const actual = file.text.slice(at.start, at.end);
    report({ rule: 'unexpected-value', at, facts: { key: ':step', expected, actual } });
  }
  const [before, ...after] = split(root);
  return {
    introduction: readProse(before?.nodes ?? [], [], file, report),
    steps: after.flatMap(({ heading, nodes }) =>
      heading ? [readStep(heading, settings.get(heading), nodes, file, report)] : [],
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
  report: Report,
): Step {
  if (settings) checkAttributes(settings, KNOWN_KEYS.step, file, report);
  const title = { value: plainText(heading).trim(), at: insidePlace(heading, file) };
  if (title.value === '') {
    const actual = file.text.slice(title.at.start, title.at.end);
    report({
      rule: 'unexpected-value',
      at: title.at,
      facts: { key: 'a heading', expected: NO_TITLE, actual },
    });
  }
  return {
    title,
    heading: heading.children,
    ...present('minutes', settings && readMinutes(settings, 'minutes', file, report)),
    ahead: isSet(settings, file, report),
    ...present('dry', settings && readMinutes(settings, 'dry', file, report)),
    prose: readProse(nodes, heading.children, file, report),
  };
}

function readMinutes(
  node: TextDirective,
  key: 'minutes' | 'dry',
  file: SourceFile,
  report: Report,
): At<number> | undefined {
  const actual = node.attributes?.[key];
  if (actual === undefined || actual === null) return undefined;
  const at = attributePlace(node, key, file);
  if (/^[1-9]\d{0,3}$/u.test(actual)) return { value: Number(actual), at };
  report({ rule: 'unexpected-value', at, facts: { key, expected: 'a whole number of minutes', actual } });
  return undefined;
}

function isSet(node: TextDirective | undefined, file: SourceFile, report: Report): boolean {
  const actual = node?.attributes?.ahead;
  if (node === undefined || actual === undefined || actual === null) return false;
  if (actual === '' || actual === 'yes') return true;
  if (actual === 'no') return false;
  const at = attributePlace(node, 'ahead', file);
  report({ rule: 'unexpected-value', at, facts: { key: 'ahead', expected: 'yes or no', actual } });
  return false;
}
