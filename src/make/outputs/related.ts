import { moreScript, relatedOf } from '../../site/related.ts';
import { voiceOf } from '../../words/voice.ts';
import { MORE } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/<slug>/more.js`: the projects that a project's page leads on to. */
export const related: Output = {
  ofSite: ({ cards, labels }) =>
    [...relatedOf(cards)].map(([slug, each]) => ({
      path: `site/${slug}/${MORE}`,
      produce: () => moreScript(each, voiceOf(labels)),
    })),
};
