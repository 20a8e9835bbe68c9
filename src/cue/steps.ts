import type { RootContent } from 'mdast';
import { visit } from 'unist-util-visit';
import { renderMarkdown } from '../handout/markdown.ts';
import type { HOST } from '../handout/markdown-handlers.ts';
import type { Setting } from '../handout/setting.ts';
import type { Project, Step } from '../project/model.ts';
import { pieceNamed } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { actionsOf, ownListOf } from './actions.ts';
import { runClock, type SayTime, type Slot, shareOf, timesFrom } from './clock.ts';
import { pictureOf } from './picture.ts';
import type { CardRoom } from './room.ts';
import { cueProse, spokenProse } from './spoken.ts';
import { piecesNamed } from './taken-up.ts';

/** The session minute by minute. */
type RunningOrder = {
  readonly start: string;
  readonly end: string;
  /** Whether it may end later: of some step nobody knows how long it lasts. */
  readonly isOpen: boolean;
  /** Whether anything at all is known of its times. */
  readonly isTimed: boolean;
  readonly opening: readonly SafeHtml[];
  readonly steps: readonly CueStep[];
};

/** Each step that is done in the session. `start` is `HH:MM`. */
export function runningOrder(setting: Setting, start: string | undefined, room: CardRoom): RunningOrder {
  const { project, voice } = setting;
  const live = project.steps
    .map((step, index) => ({ step, number: index + 1 }))
    .filter(({ step }) => !step.ahead);
  // What the minutes of the project leave is shared among the steps that say nothing of theirs.
  const share = shareOf(minutesLeft(project), live.filter(({ step }) => !step.minutes).length);
  const minutesOf = ({ minutes }: Step): number => minutes?.value ?? share;
  const clock = runClock(
    live.map(({ step }) => ({
      minutes: minutesOf(step),
      dry: step.dry?.value ?? 0,
      pieces: piecesNamed(step),
    })),
  );
  const time = timesFrom(start, voice);
  const unknown = live.findIndex(({ step }) => minutesOf(step) === 0);
  const isOpen = unknown >= 0;
  const shown = new Set<string>();
  return {
    start: time(0),
    end: time(clock.end),
    isOpen,
    isTimed: clock.end > 0,
    opening: asidesOf(project.introduction.nodes, 'host', setting),
    steps: live.flatMap(({ step, number }, index) => {
      const slot = clock.slots[index];
      // Behind a step of which nothing is known no time is.
      const at = slot && clock.end > 0 && (!isOpen || index <= unknown) ? time(slot.from) : undefined;
      const minutes = minutesOf(step);
      const lasts = minutes > 0 ? voice.duration(minutes) : undefined;
      const about =
        lasts !== undefined && !step.minutes ? voice.say('cue-about', { duration: lasts }) : lasts;
      return slot ? [cueStep(setting, step, { number, slot, time, at, lasts: about }, room, shown)] : [];
    }),
  };
}

/** What the minutes of a project leave for its steps without any. */
function minutesLeft({ minutes, steps }: Project): number {
  const timed = steps.reduce((total, step) => total + (step.minutes?.value ?? 0), 0);
  return (minutes?.value ?? 0) - timed;
}

/** When a step begins and how long it lasts, as far as that is known. */
type Timing = {
  readonly number: number;
  readonly slot: Slot;
  readonly time: SayTime;
  readonly at: string | undefined;
  readonly lasts: string | undefined;
};

/** A step as it stands on the card: when, what to know before it, what to say, what it looks like. */
type CueStep = {
  readonly number: number;
  readonly at: string | undefined;
  readonly title: SafeHtml;
  readonly time: string | undefined;
  readonly waits: string | undefined;
  readonly dry: string | undefined;
  readonly notes: readonly SafeHtml[];
  readonly cautions: readonly SafeHtml[];
  readonly actions: readonly SafeHtml[];
  readonly picture: SafeHtml | undefined;
};

function cueStep(
  setting: Setting,
  step: Step,
  { number, slot, time, at, lasts }: Timing,
  room: CardRoom,
  shown: Set<string>,
): CueStep {
  const { voice } = setting;
  const { dryAt, waits } = slot;
  const prose = cueProse(setting);
  return {
    number,
    at,
    title: renderMarkdown(step.heading, prose),
    time: lasts,
    waits: waits > 0 ? voice.say('cue-waits', { duration: voice.duration(waits) }) : undefined,
    dry: dryAt === undefined ? undefined : voice.say('cue-dry-at', { time: time(dryAt) }),
    notes: asidesOf(step.prose.nodes, 'host', setting),
    cautions: asidesOf(step.prose.nodes, 'caution', setting),
    actions: spokenActions(step, room, setting),
    picture: room.picture && pictureOf(setting, number, room.picture, shown),
  };
}

/** That a list is on the sheet. */
const LISTED = { assembly: 'cue-listed-assembly', trims: 'cue-listed-trims' } as const;

/** What is said in a step, then its list of what is glued or cut, or that it is on the sheet. */
function spokenActions(step: Step, { actions, lists }: CardRoom, setting: Setting): readonly SafeHtml[] {
  const { voice } = setting;
  const prose = spokenProse(setting);
  const said = actionsOf(step, actions, voice.language).map((action) => renderMarkdown([action], prose));
  const list = ownListOf(step);
  if (actions === 0 || !list) return said;
  const isSaid = lists === 'all' || (lists === 'without a sentence' && said.length === 0);
  const told = isSaid ? renderMarkdown([list.line], prose) : voice.phrase(LISTED[list.kind], {});
  return [...said, told];
}

/** A step of the preparation. */
type AheadStep = {
  readonly number: number;
  readonly title: SafeHtml;
  readonly time: string | undefined;
  readonly dry: string | undefined;
  readonly pieces: readonly string[];
  readonly notes: readonly SafeHtml[];
};

/**
 * What is to be done before the session, and to which pieces: for as many people as usually come, if the settings say how
 * many, else for each. Drying takes no longer for many.
 */
export function aheadSteps(setting: Setting, people: number | undefined): readonly AheadStep[] {
  const { project, voice } = setting;
  return project.steps.flatMap((step, index) => {
    if (!step.ahead) return [];
    const pieces = [...piecesNamed(step)].flatMap((id) => project.pieces.get(id) ?? []);
    const { minutes, dry } = step;
    return {
      number: index + 1,
      title: renderMarkdown(step.heading, cueProse(setting)),
      time: minutes && preparation(minutes.value, people, setting),
      dry: dry && voice.say('step-dry', { duration: voice.duration(dry.value) }),
      pieces: pieces.map(({ id, count }) =>
        voice.say('cue-count', {
          count: count.value * (people ?? 1),
          piece: pieceNamed(id.value, voice.say),
        }),
      ),
      notes: asidesOf(step.prose.nodes, 'host', setting),
    };
  });
}

function preparation(minutes: number, people: number | undefined, { voice }: Setting): string {
  if (people === undefined) return voice.say('cue-ahead-each', { duration: voice.duration(minutes) });
  const { say, duration } = voice;
  return say(say.counted('cue-ahead-all', people), { duration: duration(minutes * people), count: people });
}

/** What a step's containers of one name say, wherever in it they stand: `host` for the demonstrator, `caution` for all. */
function asidesOf(
  nodes: readonly RootContent[],
  name: typeof HOST | 'caution',
  setting: Setting,
): readonly SafeHtml[] {
  const found: SafeHtml[] = [];
  visit({ type: 'root', children: [...nodes] }, 'containerDirective', (node) => {
    if (node.name === name) found.push(renderMarkdown(node.children, cueProse(setting)));
  });
  return found;
}
