import type { Root } from 'hast';
import { type Schema, sanitize } from 'hast-util-sanitize';
import { toHtml } from 'hast-util-to-html';
import type { RootContent } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import { toString as textWithin } from 'mdast-util-to-string';
import { SKIP, visit } from 'unist-util-visit';
import { html, SafeHtml } from '../words/safe-html.ts';
import { handlersFor, type ProseSetting } from './markdown-handlers.ts';

/**
 * What is left of a project's Markdown: elements and attributes named here, nothing else. Whatever we set in
 * ourselves (measurements, references, figures) passes as a numbered slot that no Markdown can write.
 */
const SCHEMA: Schema = {
  tagNames: [
    ...['p', 'h2', 'h3', 'h4', 'h5', 'h6', 'pre', 'hr', 'blockquote', 'aside', 'div'],
    ...['em', 'strong', 'del', 'a', 'code', 'br', 'span'],
    ...['ul', 'ol', 'li', 'table', 'thead', 'tbody', 'tr', 'th', 'td'],
  ],
  attributes: {
    a: ['href', 'title'],
    ol: ['start'],
    ul: [['className', 'contains-task-list']],
    li: [['className', 'task-list-item']],
    th: [
      ['align', 'left', 'right', 'center'],
      ['scope', 'col'],
    ],
    td: [['align', 'left', 'right', 'center']],
    aside: [
      ['className', 'tip', 'caution'],
      ['role', 'note'],
    ],
    p: [['className', 'aside-word']],
    span: ['dataSlot'],
    div: ['dataSlot'],
  },
  protocols: { href: ['http', 'https', 'mailto'] },
  strip: ['script', 'style'],
  required: {},
  clobber: [],
  clobberPrefix: '',
};

/** A project's Markdown, blocks or what stands in a line, as markup: a closed set of elements, no code of anyone's. */
export function renderMarkdown(nodes: readonly RootContent[], setting: ProseSetting): SafeHtml {
  const slots: SafeHtml[] = [];
  const tree = sanitize(treeOf(nodes, setting, slots), SCHEMA) as Root;
  const text = readingOf(tree);
  fillSlots(tree, slots);
  return SafeHtml.vouched(toHtml(tree, { allowDangerousHtml: true }).trim(), text);
}

/** What a reader reads of it, in one run. */
export function markdownText(nodes: readonly RootContent[], setting: ProseSetting): string {
  return readingOf(treeOf(nodes, setting, []));
}

function treeOf(nodes: readonly RootContent[], setting: ProseSetting, slots: SafeHtml[]): Root {
  return toHast({ type: 'root', children: [...nodes] }, { handlers: handlersFor(setting, slots) }) as Root;
}

function readingOf(tree: Root): string {
  return textWithin(tree).replace(/\s+/gu, ' ').trim();
}

/** After sanitising, so that what is set in needs no loophole in the schema. No other raw node is left by then. */
function fillSlots(tree: Root, slots: readonly SafeHtml[]): void {
  visit(tree, 'element', (node, index, parent) => {
    const slot = node.properties.dataSlot;
    if (slot === undefined || index === undefined || !parent) return;
    const filling = slots[Number(slot)] ?? html``;
    parent.children[index] = { type: 'raw', value: filling.toHTML() } as never;
    return [SKIP, index + 1];
  });
}
