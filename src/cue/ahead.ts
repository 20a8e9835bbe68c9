import { renderInline } from '../handout/markdown.ts';
import { proseSetting } from '../handout/prose-setting.ts';
import type { Setting } from '../handout/setting.ts';
import type { Step } from '../project/model.ts';
import { nameOf } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { asidesOf } from './asides.ts';
import { piecesNamed } from './pieces-named.ts';

/** A step to be done before the session. */
export type AheadStep = {
  readonly number: number;
  readonly title: SafeHtml;
  readonly time: string | undefined;
  /** `1 × box, 20 × card`: what it is done to. */
  readonly pieces: readonly string[];
  readonly notes: readonly SafeHtml[];
};

export function aheadSteps(setting: Setting): readonly AheadStep[] {
  return setting.project.steps.flatMap((step, index) =>
    step.ahead ? [aheadStep(setting, step, index + 1)] : [],
  );
}

function aheadStep(setting: Setting, step: Step, number: number): AheadStep {
  const { project, voice } = setting;
  return {
    number,
    title: renderInline(step.heading, proseSetting(setting, 4)),
    time: step.minutes && voice.duration(step.minutes.value + (step.dry?.value ?? 0)),
    pieces: [...piecesNamed(step)].flatMap((id) => {
      const piece = project.pieces.get(id);
      return piece ? [voice.say('cue-count', { count: piece.count.value, piece: nameOf(id) })] : [];
    }),
    notes: asidesOf(step.prose.nodes, 'host', setting),
  };
}
