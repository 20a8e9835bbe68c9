import type { Element, ElementContent } from 'hast';
import type {
  Heading,
  Image,
  Link,
  ListItem,
  Paragraph,
  Parents,
  PhrasingContent,
  RootContent,
  Table,
  Text,
} from 'mdast';
import { defaultHandlers, type Options } from 'mdast-util-to-hast';
import { toString as textWithin } from 'mdast-util-to-string';
import type { Figure } from '../drawing/figures.ts';
import type { ReferenceKind } from '../project/prose/reference.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';
import type { TextPart } from './measured-text.ts';
import type { Refer } from './references.ts';

/** What a stretch of Markdown is set with. */
export type ProseSetting = {
  readonly voice: Voice;
  /** The whole source file, for what only looked like a directive. */
  readonly source: string;
  /** The level of the highest heading within. */
  readonly headings: 2 | 3 | 4;
  readonly refer: Refer;
  readonly measured: (text: string) => readonly TextPart[];
  readonly draw: (of: string, view?: string, caption?: string) => Figure | undefined;
  readonly picture: (path: string, alternative: string, caption?: string) => Figure | undefined;
};

type Handlers = NonNullable<Options['handlers']>;
type State = Parameters<NonNullable<Handlers[keyof Handlers]>>[0];

/** A setting that puts our own markup in the tree as a numbered slot with its words, filled once the tree is sanitised. */
type Placing = ProseSetting & { readonly place: (content: SafeHtml, kind?: 'span' | 'div') => Element };

function elementOf(
  tagName: string,
  children: ElementContent[],
  properties: Element['properties'] = {},
): Element {
  return { type: 'element', tagName, properties, children };
}

function textOf(value: string): ElementContent {
  return { type: 'text', value };
}

/** The very characters of a node, for what stays text. */
function asWritten({ position }: RootContent, { source }: ProseSetting): ElementContent {
  return textOf(source.slice(position?.start.offset ?? 0, position?.end.offset ?? 0));
}

/** How each kind of node becomes HTML, where that differs from the library's own way. */
export function handlersFor(prose: ProseSetting, slots: SafeHtml[]): Handlers {
  const setting: Placing = {
    ...prose,
    place: (content, kind = 'span') =>
      elementOf(kind, [textOf(content.text)], { dataSlot: String(slots.push(content) - 1) }),
  };
  return {
    ...directiveHandlers(setting),
    text: (_, node: Text) =>
      setting
        .measured(node.value)
        .map((part): ElementContent => (typeof part === 'string' ? textOf(part) : setting.place(part))),
    heading: (state: State, node: Heading) => headingOf(state, node, setting.headings),
    paragraph: (state: State, node: Paragraph) => paragraphOf(state, node, setting),
    image: (_, node: Image) => figureOf(node, setting),
    table: (state: State, node: Table) => tableOf(state, node),
    listItem: (state: State, node: ListItem, parent?: Parents) => taskOf(state, node, parent, setting),
    link: (state: State, node: Link) =>
      isAddress(node.url) ? defaultHandlers.link(state, node) : state.all(node),
    footnoteReference: (_, node) => asWritten(node, setting),
    footnoteDefinition: (_, node) => elementOf('p', [asWritten(node, setting)]),
  };
}

/** The highest heading a person can write within a step or the introduction is `###`. */
function headingOf(state: State, node: Heading, highest: number): Element {
  const level = Math.min(6, highest + Math.max(0, node.depth - 3));
  return elementOf(`h${level}`, state.all(node));
}

/** A paragraph is broken where a picture or one of our lists stands in it. */
function paragraphOf(state: State, node: Paragraph, setting: Placing): ElementContent[] {
  const blocks: ElementContent[] = [];
  let line: PhrasingContent[] = [];
  const endLine = (): void => {
    if (!line.every(isBlank)) blocks.push(elementOf('p', state.all({ type: 'paragraph', children: line })));
    line = [];
  };
  for (const child of node.children) {
    const block = child.type === 'image' ? figureOf(child, setting) : listOf(child, setting);
    if (block) {
      endLine();
      blocks.push(block);
    } else line.push(child);
  }
  endLine();
  return blocks;
}

function isBlank(node: PhrasingContent): boolean {
  return node.type === 'break' || (node.type === 'text' && node.value.trim() === '');
}

/** A picture with its title as the caption; where there is no picture, its alternative. */
function figureOf(node: Image, { picture, voice, place }: Placing): ElementContent {
  const figure = picture(node.url, node.alt ?? '', node.title ?? undefined);
  if (figure) return place(figure.html, 'div');
  return elementOf('p', [textOf(voice.say('missing-picture', { alternative: node.alt ?? '' }))]);
}

function tableOf(state: State, node: Table): Element {
  const table = defaultHandlers.table(state, node);
  for (const row of table.children.flatMap(elementsOf)) {
    for (const cell of elementsOf(row)) if (cell.tagName === 'th') cell.properties.scope = 'col';
  }
  return table;
}

function elementsOf(node: ElementContent): Element[] {
  return node.type === 'element' ? node.children.filter((child) => child.type === 'element') : [];
}

/** A task's box is drawn, not an input: it looks the same on paper, and no form control stands without a name. */
function taskOf(
  state: State,
  node: ListItem,
  parent: Parents | undefined,
  { voice, place }: Placing,
): Element {
  const { checked } = node;
  const item = defaultHandlers.listItem(state, { ...node, checked: null }, parent);
  if (typeof checked !== 'boolean') return item;
  const word = voice.say(checked ? 'task-done' : 'task-open');
  const box = html`<span class="tick ${checked ? 'done' : 'open'}" role="img" aria-label="${word}"></span> `;
  const paragraph = elementsOf(item).find(({ tagName }) => tagName === 'p');
  (paragraph ?? item).children.unshift(place(box));
  item.properties.className = ['task-list-item'];
  return item;
}

const HAS_SCHEME = /^[a-z][a-z\d+.-]*:/iu;
const GOOD_SCHEME = /^(?:https?|mailto):/iu;

/** Other addresses lead to code or nowhere: their text stays, without a link. */
function isAddress(url: string): boolean {
  return GOOD_SCHEME.test(url) || !(HAS_SCHEME.test(url.trim()) || url.startsWith('//'));
}

type Node<Type extends string> = Extract<RootContent, { type: Type }>;
type LeafDirective = Node<'leafDirective'>;
type TextDirective = Node<'textDirective'>;

/** Where each reference is answered: within a line of text, with a list, or with a figure. */
const ANSWERED: Readonly<Record<ReferenceKind, 'line' | 'list' | 'figure'>> = {
  piece: 'line',
  size: 'line',
  scores: 'line',
  reveal: 'line',
  count: 'line',
  trims: 'list',
  assembly: 'list',
  edge: 'line',
  impressions: 'line',
  drawing: 'figure',
};
const WHERE: ReadonlyMap<string, string> = new Map(Object.entries(ANSWERED));

/** Asides that an attendee sees. */
const ASIDES: ReadonlySet<string> = new Set(['tip', 'caution']);
/** What is for the demonstrator alone, and never reaches a sheet. */
export const HOST = 'host';

/** The blocks of a step that everybody sees. */
export function withoutHost(nodes: readonly RootContent[]): readonly RootContent[] {
  return nodes.filter((node) => !(node.type === 'containerDirective' && node.name === HOST));
}

/**
 * Our directives; whatever merely looks like one stays the text that was typed. One that has nothing to say, which the
 * proof reports, leaves the name in it; a drawing leaves nothing.
 */
function directiveHandlers(setting: Placing): Handlers {
  return {
    textDirective: (_, node: TextDirective, parent) => {
      const where = WHERE.get(node.name);
      const said = where === 'line' && answerTo(node, setting);
      if (said) return setting.place(asSentence(said, node, parent));
      const isOurs = where === 'line' || where === 'list';
      return isOurs ? textOf(textWithin(node).trim()) : asWritten(node, setting);
    },
    leafDirective: (_, node: LeafDirective) => {
      const figure = drawingOf(node, setting);
      if (figure) return setting.place(figure.html, 'div');
      return WHERE.get(node.name) === 'figure' ? undefined : elementOf('p', [asWritten(node, setting)]);
    },
    containerDirective: (state: State, node: Node<'containerDirective'>) => {
      if (node.name === HOST) return undefined;
      if (!ASIDES.has(node.name)) return elementOf('p', [asWritten(node, setting)]);
      const word = elementOf('p', [textOf(setting.voice.say(node.name))], { className: ['aside-word'] });
      return elementOf('aside', [word, textOf('\n'), ...state.all(node)], {
        className: [node.name],
        role: 'note',
      });
    },
  };
}

/** What is answered with a whole clause: a sentence with its stop where it stands as one. */
const CLAUSES: readonly string[] = ['scores', 'edge', 'impressions'] satisfies ReferenceKind[];

function asSentence(said: SafeHtml, node: TextDirective, parent: Parents | undefined): SafeHtml {
  if (!CLAUSES.includes(node.name) || parent?.type !== 'paragraph') return said;
  const index = parent.children.indexOf(node);
  const before = parent.children[index - 1];
  const begins = !before || (before.type === 'text' && /[.!?]\s+$/u.test(before.value));
  if (!begins) return said;
  const isLast = index === parent.children.length - 1;
  const stop = isLast && !/[.!?]$/u.test(said.text) ? '.' : '';
  return html`${said.capitalized()}${stop}`;
}

function answerTo(node: TextDirective, { refer }: ProseSetting): SafeHtml | undefined {
  return refer(node.name as ReferenceKind, textWithin(node).trim());
}

/** The list that `:trims[box]` or `:assembly[box]` stands for; undefined for anything else. */
function listOf(node: PhrasingContent, setting: Placing): Element | undefined {
  if (node.type !== 'textDirective' || WHERE.get(node.name) !== 'list') return undefined;
  const list = answerTo(node, setting);
  return list && setting.place(list, 'div');
}

/** The figure a `::drawing{of=… view=…}` asks for; undefined for any other directive. */
export function drawingOf(node: LeafDirective, { draw }: ProseSetting): Figure | undefined {
  if (WHERE.get(node.name) !== 'figure') return undefined;
  const { of, view, caption } = node.attributes ?? {};
  return draw(of ?? '', view ?? undefined, caption ?? undefined);
}
