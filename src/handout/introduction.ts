import type { SafeHtml } from '../words/safe-html.ts';
import { renderBlocks } from './markdown.ts';
import { proseSetting } from './prose-setting.ts';
import type { Setting } from './setting.ts';

/** What stands before the first step: at the head of a page, and in print before the steps, where there is room. */
export function introductionOf(setting: Setting): SafeHtml | undefined {
  const { nodes } = setting.project.introduction;
  return nodes.length === 0 ? undefined : renderBlocks(nodes, proseSetting(setting, 2));
}
