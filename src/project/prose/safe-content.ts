import type { Definition, Image, Link, Nodes, Root, RootContent } from 'mdast';
import type { Finding } from '../finding.ts';
import type { SourceFile } from '../source.ts';
import { everyNode, placeOf, rewrite } from './markdown.ts';

/**
 * Takes out of a tree whatever could act on a page: HTML, and links that are no plain links. A comment is dropped
 * silently. References are resolved to links and pictures, so that every part of the tree stands on its own.
 */
export function makeSafe(root: Root, file: SourceFile, report: (finding: Finding) => void): void {
  const definitions = definitionsOf(root);
  const unsafe = (node: Nodes, what: 'HTML' | 'link in prose'): void =>
    report({ rule: 'unsafe-content', at: placeOf(node, file), facts: { what } });
  rewrite(root, (node) => {
    if (node.type === 'definition') {
      if (!isSafeLink(node.url)) unsafe(node, 'link in prose');
      return [];
    }
    if (node.type === 'html') {
      if (!isHarmlessHtml(node.value)) unsafe(node, 'HTML');
      return [];
    }
    const resolved = resolve(node, definitions);
    if (resolved.type === 'link' && !isSafeLink(resolved.url)) {
      if (node.type === 'link') unsafe(node, 'link in prose');
      return resolved.children;
    }
    return [resolved];
  });
  rewrite(root, (node) => (node.type === 'paragraph' && node.children.length === 0 ? [] : undefined));
}

/** A comment, or the closing half of a tag whose opening half was reported. */
function isHarmlessHtml(value: string): boolean {
  return /^<!--(?:(?!-->)[\s\S])*-->\s*$/u.test(value) || /^<\/[a-z][\w-]*\s*>$/iu.test(value);
}

/**
 * Whether a link may be followed: http, https, mailto, or a place within the site. White space and control
 * characters, which browsers skip, are skipped before its scheme is looked at.
 */
function isSafeLink(url: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not hide a scheme
  const bare = url.replace(/[\u0000-\u0020\u007f-\u00a0\u200b-\u200f\u2028\u2029\ufeff]/gu, '');
  const scheme = /^([a-z][a-z0-9+.-]*):/iu.exec(bare)?.[1]?.toLowerCase();
  if (scheme !== undefined) return ['http', 'https', 'mailto'].includes(scheme);
  return !/^[\\/]{2}/u.test(bare) && !/^[^/?#]*:/u.test(bare);
}

function definitionsOf(root: Root): ReadonlyMap<string, Definition> {
  const definitions = new Map<string, Definition>();
  for (const node of everyNode(root)) {
    if (node.type === 'definition' && !definitions.has(node.identifier))
      definitions.set(node.identifier, node);
  }
  return definitions;
}

function resolve(node: RootContent, definitions: ReadonlyMap<string, Definition>): RootContent {
  if (node.type !== 'linkReference' && node.type !== 'imageReference') return node;
  const definition = definitions.get(node.identifier);
  if (!definition) return node;
  const { url, title } = definition;
  const common = { url, ...(title ? { title } : {}), ...(node.position ? { position: node.position } : {}) };
  if (node.type === 'linkReference')
    return { type: 'link', children: node.children, ...common } satisfies Link;
  return { type: 'image', alt: node.alt ?? null, ...common } satisfies Image;
}
