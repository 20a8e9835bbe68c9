import type { RootContent } from 'mdast';
import { toString as textWithin } from 'mdast-util-to-string';
import { visit } from 'unist-util-visit';
import { accentOf } from '../drawing/accent.ts';
import type { Editions } from '../edition/editions.ts';
import { allergensHeld, cautionsFor } from '../handout/cautions.ts';
import { cssString, marginBox, PAPER_SIZE, pageOf } from '../handout/css.ts';
import { cutList } from '../handout/cut-list.ts';
import { renderMarkdown } from '../handout/markdown.ts';
import { type HOST, withoutHost } from '../handout/markdown-handlers.ts';
import { type PageInput, pageHtml } from '../handout/render.ts';
import { scoreList } from '../handout/score-list.ts';
import { paperTitle, type Setting, settingOf } from '../handout/setting.ts';
import { proseSetting } from '../handout/steps.ts';
import { paperColor, stocksUsed } from '../handout/supplies.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Paper, Project, Step } from '../project/model.ts';
import type { ReferenceKind } from '../project/prose/reference.ts';
import { readRef } from '../project/ref.ts';
import { revisionTitle } from '../words/changes.ts';
import { pieceNamed } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { runClock, type SayTime, type Slot, timesFrom } from './clock.ts';
import { type CardRoom, shortened } from './room.ts';
import { laidOut } from './table.ts';

/** What a cue card is made from. */
type CueInput = PageInput & { readonly editions: Editions; readonly ledger: Ledger };

/** The demonstrator's own card of a project as a document to be printed, as far as there is room for it. */
export function cueCardHtml(input: CueInput, room: CardRoom): string {
  const { editions, site, labels, ledger } = input;
  // Leads with the edition as written, as large print does, and nothing in it is only for a screen.
  const setting = settingOf(editions, 'large-print', labels, new Map());
  const { project, voice } = setting;
  const order = runningOrder(setting, site.sessions?.at?.value);
  const { start, end } = order;
  const ahead = aheadSteps(setting);
  const revision = ledger.revisions.at(-1);
  const foot = [site.title, ...(revision ? [revisionTitle(revision, voice)] : [])].join(' · ');
  const [paper = 'letter'] = site.paper;
  const head = {
    title: paperTitle(editions, labels, 'cue-card'),
    description: voice.say('cue-private'),
    css: cueRules(setting, paper, room, foot),
  };
  return pageHtml(input, 'cue-card', head, {
    title: typographic(project.title.value, voice.language),
    day: project.session && voice.day(project.session.value),
    hours: voice.say(order.isOpen ? 'cue-hours-open' : 'cue-hours', { start, end }),
    room,
    cuts: shortened(
      cutList(setting).groups.flatMap(({ stock, rows }) => rows.map((row) => ({ ...row, stock }))),
      room,
    ),
    scores: shortened(scoreList(setting)?.pieces ?? [], room),
    order,
    steps: shortened(order.steps, room),
    ahead: shortened(ahead, room),
    papers: stocksUsed(project)
      .map(({ name }) => name)
      .join(', '),
    table: laidOut(setting),
    cautions: spokenCautions(setting),
    missing: missing(setting, [...order.steps, ...ahead, { notes: order.opening }], room),
  });
}

/** What there was and the room had no place for, and where it is to be found. */
function missing(
  { project: { supplies, file }, voice }: Setting,
  said: readonly { readonly notes: readonly SafeHtml[]; readonly cautions?: readonly SafeHtml[] }[],
  room: CardRoom,
): readonly string[] {
  const left = {
    'cue-missing-cautions': !room.stepCautions && said.some(({ cautions = [] }) => cautions.length > 0),
    'cue-missing-instead': room.table && !room.instead && supplies.some(({ instead }) => instead),
    'cue-missing-table': !room.table && supplies.length > 0,
    'cue-missing-notes': !room.notes && said.some(({ notes }) => notes.length > 0),
  };
  return Object.entries(left).flatMap(([words, isLeft]) =>
    isLeft ? [voice.say(words, { file: file.path })] : [],
  );
}

/** The paper, the type and the color of one card; `foot` runs along the bottom of its pages. */
function cueRules(setting: Setting, paper: Paper, { points }: CardRoom, foot: string): string {
  const { color, tint } = accentOf(paperColor(setting.project));
  return `:root { --accent: ${color}; --tint: ${tint}; font-size: ${points}pt; }
@page {
  size: ${PAPER_SIZE[paper]};
  ${marginBox('bottom-left', cssString(foot), '10pt')}
  ${marginBox('bottom-right', pageOf(setting.voice), '10pt')}
}`;
}

/** The very cautions of the sheet, as short as they can be said aloud. */
function spokenCautions({ project, voice }: Setting): readonly object[] {
  const allergens = allergensHeld(project, voice);
  return cautionsFor(project, voice).map(({ id, heading }) => ({
    heading,
    text: voice.say(`cue-caution-${id}`, { allergens }),
  }));
}

/** The session minute by minute; what is done ahead stands elsewhere. `start` is `HH:MM`. */
function runningOrder(setting: Setting, start: string | undefined) {
  const { project, voice } = setting;
  const live = project.steps
    .map((step, index) => ({ step, number: index + 1 }))
    .filter(({ step }) => !step.ahead);
  const clock = runClock(
    live.map(({ step }) => ({
      minutes: step.minutes?.value ?? 0,
      dry: step.dry?.value ?? 0,
      pieces: piecesNamed(step),
    })),
  );
  const time = timesFrom(start, voice);
  // A step without minutes ends later than reckoned: when, only the project's own minutes tell.
  const isUntimed = live.some(({ step }) => !step.minutes);
  const end = clock.end + (isUntimed ? minutesLeft(project) : 0);
  return {
    start: time(0),
    end: time(end),
    isOpen: isUntimed && end === clock.end,
    dries: live.some(({ step }) => step.dry),
    opening: asidesOf(project.introduction.nodes, 'host', setting),
    steps: live.flatMap(({ step, number }, index) => {
      const slot = clock.slots[index];
      return slot ? [cueStep(setting, step, number, slot, time)] : [];
    }),
  };
}

/** What the minutes of a project leave for its steps without any. */
function minutesLeft({ minutes, steps }: Project): number {
  const timed = steps.reduce((total, step) => total + (step.minutes?.value ?? 0), 0);
  return Math.max(0, (minutes?.value ?? 0) - timed);
}

function cueStep(setting: Setting, step: Step, number: number, slot: Slot, time: SayTime) {
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

/** What is to be done before the session, how long it takes with drying, and to which pieces. */
function aheadSteps(setting: Setting) {
  const { project, voice } = setting;
  return project.steps.flatMap((step, index) => {
    if (!step.ahead) return [];
    const pieces = [...piecesNamed(step)].flatMap((id) => project.pieces.get(id) ?? []);
    return {
      number: index + 1,
      title: renderMarkdown(step.heading, proseSetting(setting)),
      time: step.minutes && voice.duration(step.minutes.value + (step.dry?.value ?? 0)),
      pieces: pieces.map(({ id, count }) =>
        voice.say('cue-count', { count: count.value, piece: pieceNamed(id.value, voice.say) }),
      ),
      notes: asidesOf(step.prose.nodes, 'host', setting),
    };
  });
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
  'edge',
  'impressions',
] satisfies ReferenceKind[]);

/** Ids of the pieces a step takes up, in the order it names them; what only the demonstrator is told does not count. */
function piecesNamed({ heading, prose }: Step): ReadonlySet<string> {
  const pieces = new Set<string>();
  const children = [...heading, ...withoutHost(prose.nodes)];
  visit({ type: 'root', children }, 'textDirective', (node) => {
    if (TAKES_UP.has(node.name)) pieces.add(readRef(textWithin(node).trim()).piece);
  });
  return pieces;
}
