import { renderInline } from '../handout/markdown.ts';
import { proseSetting } from '../handout/prose-setting.ts';
import type { Setting } from '../handout/setting.ts';
import type { Step } from '../project/model.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { asidesOf } from './asides.ts';
import { type Clock, runClock, type Slot } from './clock.ts';
import { piecesNamed } from './pieces-named.ts';
import { type SayTime, timesFrom } from './times.ts';

/** The session minute by minute, with what the demonstrator noted for each step. */
export type RunningOrder = {
  readonly start: string;
  readonly end: string;
  /** Whether a step says no minutes, so that it ends later than reckoned. */
  readonly isOpen: boolean;
  readonly dries: boolean;
  readonly opening: readonly SafeHtml[];
  readonly steps: readonly CueStep[];
};

export type CueStep = {
  readonly number: number;
  readonly at: string;
  readonly title: SafeHtml;
  readonly time: string;
  /** `wait 2 minutes for it to dry`. */
  readonly waits: string | undefined;
  /** `dry at 7:05 PM`. */
  readonly dry: string | undefined;
  readonly notes: readonly SafeHtml[];
  readonly cautions: readonly SafeHtml[];
};

/** The steps of the session itself; what is done ahead stands elsewhere. `start` is `HH:MM`. */
export function runningOrder(setting: Setting, start: string | undefined): RunningOrder {
  const { project, voice } = setting;
  const live = project.steps
    .map((step, index) => ({ step, number: index + 1 }))
    .filter(({ step }) => !step.ahead);
  const clock = clockOf(live.map(({ step }) => step));
  const time = timesFrom(start, voice);
  return {
    start: time(0),
    end: time(clock.end),
    isOpen: live.some(({ step }) => !step.minutes),
    dries: live.some(({ step }) => step.dry),
    opening: asidesOf(project.introduction.nodes, 'host', setting),
    steps: live.flatMap(({ step, number }, index) => {
      const slot = clock.slots[index];
      return slot ? [cueStep(setting, step, number, slot, time)] : [];
    }),
  };
}

function clockOf(steps: readonly Step[]): Clock {
  return runClock(
    steps.map((step) => ({
      minutes: step.minutes?.value ?? 0,
      dry: step.dry?.value ?? 0,
      pieces: piecesNamed(step),
    })),
  );
}

function cueStep(setting: Setting, step: Step, number: number, slot: Slot, time: SayTime): CueStep {
  const { voice } = setting;
  const { from, dryAt, waits } = slot;
  return {
    number,
    at: time(from),
    title: renderInline(step.heading, proseSetting(setting, 4)),
    time: step.minutes ? voice.duration(step.minutes.value) : voice.say('cue-no-time'),
    waits: waits > 0 ? voice.say('cue-waits', { duration: voice.duration(waits) }) : undefined,
    dry: dryAt === undefined ? undefined : voice.say('cue-dry-at', { time: time(dryAt) }),
    notes: asidesOf(step.prose.nodes, 'host', setting),
    cautions: asidesOf(step.prose.nodes, 'caution', setting),
  };
}
