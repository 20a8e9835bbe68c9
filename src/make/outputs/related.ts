import { moreScript, relatedOf } from '../../site/related.ts';
import { voiceOf } from '../../words/voice.ts';
import { moreScriptOf } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/assets/more/<slug>.js`: the projects that a project's page leads on to. */
export const related: Output = {
  ofSite: ({ cards, labels }) =>
    [...relatedOf(cards)].map(([slug, each]) => ({
      path: `site/${moreScriptOf(slug)}`,
      produce: () => moreScript(each, voiceOf(labels)),
    })),
};
