import type { Element, ElementContent } from 'hast';
import type { Heading, Image, Link, ListItem, Paragraph, Parents, PhrasingContent, Table, Text } from 'mdast';
import { defaultHandlers } from 'remark-rehype';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { directiveHandlers, listOf } from './directives.ts';
import {
  asWritten,
  elementOf,
  type Handlers,
  type Place,
  type ProseSetting,
  type State,
  textOf,
} from './markdown-nodes.ts';

/** How each kind of node becomes HTML, where that differs from the library's own way. */
export function handlersFor(setting: ProseSetting, slots: SafeHtml[]): Handlers {
  const place: Place = (content, kind = 'span') => ({
    type: 'element',
    tagName: kind,
    properties: { dataSlot: String(slots.push(content) - 1) },
    children: [],
  });
  return {
    ...directiveHandlers(setting, place),
    text: (_, node: Text) =>
      setting
        .measured(node.value)
        .map((part): ElementContent => (typeof part === 'string' ? textOf(part) : place(part))),
    heading: (state: State, node: Heading) => headingOf(state, node, setting.headings),
    paragraph: (state: State, node: Paragraph) => paragraphOf(state, node, setting, place),
    image: (_, node: Image) => figureOf(node, setting, place),
    table: (state: State, node: Table) => tableOf(state, node),
    listItem: (state: State, node: ListItem, parent: Parents | undefined) =>
      taskOf(state, node, parent, setting, place),
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

/** A paragraph is broken where a picture or a list of ours stands in it. */
function paragraphOf(state: State, node: Paragraph, setting: ProseSetting, place: Place): ElementContent[] {
  const blocks: ElementContent[] = [];
  let line: PhrasingContent[] = [];
  const endLine = (): void => {
    if (!line.every(isBlank)) blocks.push(elementOf('p', state.all({ type: 'paragraph', children: line })));
    line = [];
  };
  for (const child of node.children) {
    const block = child.type === 'image' ? figureOf(child, setting, place) : listOf(child, setting, place);
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
function figureOf(node: Image, { picture, voice }: ProseSetting, place: Place): ElementContent {
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
  { voice }: ProseSetting,
  place: Place,
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
