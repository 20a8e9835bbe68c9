import type { RootContent } from 'mdast';
import { visit } from 'unist-util-visit';
import { HOST } from '../handout/directives.ts';
import { renderBlocks } from '../handout/markdown.ts';
import { proseSetting } from '../handout/prose-setting.ts';
import type { Setting } from '../handout/setting.ts';
import type { SafeHtml } from '../words/safe-html.ts';

/** What a step's containers of one name say, wherever in it they stand: `host` for the demonstrator, `caution` for all. */
export function asidesOf(
  nodes: readonly RootContent[],
  name: typeof HOST | 'caution',
  setting: Setting,
): readonly SafeHtml[] {
  const found: SafeHtml[] = [];
  visit({ type: 'root', children: [...nodes] }, 'containerDirective', (node) => {
    if (node.name === name) found.push(renderBlocks(node.children, proseSetting(setting, 4)));
  });
  return found;
}

/** The blocks of a step that everybody sees. */
export function withoutHost(nodes: readonly RootContent[]): readonly RootContent[] {
  return nodes.filter((node) => !(node.type === 'containerDirective' && node.name === HOST));
}
