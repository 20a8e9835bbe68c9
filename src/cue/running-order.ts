import type { RootContent } from 'mdast';
import { toString as textWithin } from 'mdast-util-to-string';
import { visit } from 'unist-util-visit';
import { renderMarkdown } from '../handout/markdown.ts';
import { type HOST, withoutHost } from '../handout/markdown-handlers.ts';
import { proseSetting } from '../handout/prose.ts';
import type { Setting } from '../handout/setting.ts';
import type { ReferenceKind, Step } from '../project/model.ts';
import { nameOf, referenceOf } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { type Course, runClock, type SayTime, type Slot, timesFrom } from './clock.ts';

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

function clockOf(steps: readonly Step[]): Course {
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
    title: renderMarkdown(step.heading, proseSetting(setting)),
    time: step.minutes ? voice.duration(step.minutes.value) : voice.say('cue-no-time'),
    waits: waits > 0 ? voice.say('cue-waits', { duration: voice.duration(waits) }) : undefined,
    dry: dryAt === undefined ? undefined : voice.say('cue-dry-at', { time: time(dryAt) }),
    notes: asidesOf(step.prose.nodes, 'host', setting),
    cautions: asidesOf(step.prose.nodes, 'caution', setting),
  };
}

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
    title: renderMarkdown(step.heading, proseSetting(setting)),
    time: step.minutes && voice.duration(step.minutes.value + (step.dry?.value ?? 0)),
    pieces: [...piecesNamed(step)].flatMap((id) => {
      const piece = project.pieces.get(id);
      return piece ? [voice.say('cue-count', { count: piece.count.value, piece: nameOf(id) })] : [];
    }),
    notes: asidesOf(step.prose.nodes, 'host', setting),
  };
}

/** What a step's containers of one name say, wherever in it they stand: `host` for the demonstrator, `caution` for all. */
function asidesOf(
  nodes: readonly RootContent[],
  name: typeof HOST | 'caution',
  setting: Setting,
): readonly SafeHtml[] {
  const found: SafeHtml[] = [];
  visit({ type: 'root', children: [...nodes] }, 'containerDirective', (node) => {
    if (node.name === name) found.push(renderMarkdown(node.children, proseSetting(setting)));
  });
  return found;
}

/** Naming a piece so, a step takes it in hand; a size, a count or a drawing only tells of it. */
const TAKES_UP: ReadonlySet<string> = new Set([
  'piece',
  'reveal',
  'scores',
  'trims',
  'assembly',
] satisfies ReferenceKind[]);

/** Ids of the pieces a step takes up, in the order it names them; what only the demonstrator is told does not count. */
function piecesNamed({ heading, prose }: Step): ReadonlySet<string> {
  const pieces = new Set<string>();
  const children = [...heading, ...withoutHost(prose.nodes)];
  visit({ type: 'root', children }, 'textDirective', (node) => {
    if (TAKES_UP.has(node.name)) pieces.add(referenceOf(textWithin(node).trim()).piece);
  });
  return pieces;
}
