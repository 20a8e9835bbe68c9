import type { Link, Root } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/model.ts';
import { everyNode } from '../../src/project/prose/markdown.ts';
import { makeSafe } from '../../src/project/prose/safe-content.ts';
import { sourceFile } from '../../src/project/source.ts';
import { faultsOf, readSheet, sheetOf } from './reading.ts';

function bodyOf(body: string): Project {
  return readSheet(sheetOf('unit: in', body));
}

/** The address of a link in a tree that was made safe; Markdown itself would already change some of these. */
function linksLeft(url: string): string[] {
  const link: Link = { type: 'link', url, children: [{ type: 'text', value: 'x' }] };
  const root: Root = { type: 'root', children: [{ type: 'paragraph', children: [link] }] };
  makeSafe(root, sourceFile('box/sheet.md', ''), () => {});
  return [...everyNode(root)].flatMap((node) => (node.type === 'link' ? [node.url] : []));
}

function typesIn({ body }: Project): Set<string> {
  return new Set([...everyNode(body)].map(({ type }) => type));
}

describe('HTML', () => {
  it.each<[string, string, string]>([
    ['Cut <b>slowly</b>.', '<b>', 'Cut slowly.'],
    ['<script>alert(1)</script>', '<script>alert(1)</script>', ''],
    ['<div onclick="x()">\n\nText\n\n</div>', '<div onclick="x()">', 'Text'],
    ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>', ''],
    ['a <svg onload=x> b', '<svg onload=x>', 'a  b'],
    ['<!doctype html>', '<!doctype html>', ''],
    ['<?php x ?>', '<?php x ?>', ''],
    ['<![CDATA[x]]>', '<![CDATA[x]]>', ''],
    ['<style>p{}</style>', '<style>p{}</style>', ''],
    ['<!-- a --><b>\n', '<!-- a --><b>', ''],
    [':::tip\n<iframe src="x"></iframe>\n:::', '<iframe src="x"></iframe>', ''],
  ])('%j is left out and reported', (body, characters, left) => {
    const project = bodyOf(body);
    expect(faultsOf(project)).toEqual([`unsafe-content: ${characters}`]);
    expect(typesIn(project)).not.toContain('html');
    expect(plainText(project.body)).toBe(left);
  });

  it('in a comment is a note to oneself', () => {
    const project = bodyOf('Text.\n\n<!-- ask <b>Ann</b> first -->\n\nMore <!-- x --> text.');
    expect(faultsOf(project)).toEqual([]);
    expect(typesIn(project)).not.toContain('html');
  });

  it.each(['1 < 2 and 3 > 2', 'a <3 b', 'a <svg/onload=x> b', '`<b>` is bold', 'AT&amp;T &lt;b&gt;'])(
    '%j is none',
    (body) => {
      expect(faultsOf(bodyOf(body))).toEqual([]);
    },
  );
});

/** Ways to hide a scheme that browsers see through: case, entities, white space and control characters. */
const SCRIPTS = [
  '[a](javascript:alert(1))',
  '[a](JaVaScRiPt:alert(1))',
  '[a](&#106;avascript:x)',
  '[a](&#x6A;avascript&colon;x)',
  '[a](<java&#10;script:x>)',
  '[a](<java&Tab;script:x>)',
  '[a](<&#1;javascript:x>)',
  '[a](<\u00a0javascript:x>)',
  '[a](data:text/html;base64,PHNjcmlwdD4=)',
  '[a](vbscript:x)',
  '[a](file:///etc/passwd)',
  '[a](blob:x)',
  '[a](//evil.example)',
  '[a](<\\\\\\\\evil.example>)',
  '<javascript:alert(1)>',
];

describe('links', () => {
  it.each(SCRIPTS)('%j keeps its words and loses its link', (link) => {
    const project = bodyOf(`See ${link} here.`);
    expect(faultsOf(project)).toEqual([`unsafe-content: ${link}`]);
    expect(typesIn(project)).not.toContain('link');
    expect(plainText(project.body)).toMatch(/^See .+ here\.$/u);
  });

  it('by reference are resolved, and unsafe ones reported where they are defined', () => {
    const project = bodyOf('[a], [b][c] and [none].\n\n[a]: https://example.org "A"\n[c]: javascript:x\n');
    expect(faultsOf(project)).toEqual(['unsafe-content: [c]: javascript:x']);
    const links = [...everyNode(project.body)].filter((node) => node.type === 'link');
    expect(links).toMatchObject([{ url: 'https://example.org', title: 'A' }]);
    expect(typesIn(project)).not.toContain('definition');
    expect(plainText(project.body)).toBe('a, b and [none].');
  });

  it.each([
    'https://example.org/a?b=c#d',
    'HTTP://EXAMPLE.ORG',
    'mailto:bench@example.org',
    '#step-2',
    'other.html',
    '../card/index.html',
    'a/b:c',
    '?x=javascript:y',
  ])('%s is a plain link', (url) => {
    expect(linksLeft(url)).toEqual([url]);
  });

  it.each([
    'javascript:x',
    ' javascript:x',
    'java\tscript:x',
    'j\u0000avascript:x',
    '\u200bdata:x',
    '1:2',
    '://x',
  ])('%j is not', (url) => {
    expect(linksLeft(url)).toEqual([]);
  });
});
