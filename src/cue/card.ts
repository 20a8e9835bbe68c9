import { accentOf } from '../drawing/accent.ts';
import type { Editions } from '../edition/editions.ts';
import { allergensHeld, cautionsFor } from '../handout/cautions.ts';
import { cssString, marginBox, PAPER_SIZE, pageOf } from '../handout/css.ts';
import { cutList } from '../handout/cut-list.ts';
import { type PageInput, pageHtml } from '../handout/render.ts';
import { scoreList } from '../handout/score-list.ts';
import { paperTitle, type Setting, settingOf } from '../handout/setting.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Paper } from '../project/model.ts';
import { revisionTitle } from '../words/changes.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { timesFrom } from './clock.ts';
import { type CardRoom, shortened } from './room.ts';
import { slitsOf } from './slits.ts';
import { spokenSetting } from './spoken.ts';
import { aheadSteps, runningOrder } from './steps.ts';
import { laidOut } from './table.ts';

/** What a cue card is made from. */
type CueInput = PageInput & {
  readonly editions: Editions;
  readonly ledger: Ledger;
  /** By the path a project names them by. */
  readonly pictures: Setting['pictures'];
};

/** The demonstrator's own card of a project as a document to be printed, as far as there is room for it. */
export function cueCardHtml(input: CueInput, room: CardRoom): string {
  const { editions, site, labels, ledger } = input;
  // Leads with the edition as written, as large print does, and nothing in it is only for a screen.
  const setting = settingOf(editions, 'large-print', labels, input.pictures);
  const { project, voice } = setting;
  const at = site.sessions?.at?.value;
  const order = runningOrder(setting, at, room);
  const start = timesFrom(at, voice)(0, true);
  const people = site.sessions?.people?.value;
  const ahead = aheadSteps(setting, people);
  const revision = ledger.revisions.at(-1);
  const foot = [site.title, ...(revision ? [revisionTitle(revision, voice)] : [])].join(' · ');
  const [paper = 'letter'] = site.paper;
  const head = {
    title: paperTitle(editions, labels, 'cue-card'),
    description: voice.say('cue-private'),
    css: cueRules(setting, paper, room, foot),
  };
  return pageHtml(input, 'cue-card', head, {
    title: typographic(project.title.value, voice.say),
    day: project.session && voice.day(project.session.value),
    hours:
      order.isTimed && voice.say(order.isOpen ? 'cue-hours-open' : 'cue-hours', { start, end: order.end }),
    people: people !== undefined && voice.count('kit-attendees', people),
    room,
    cuts: shortened(
      cutList(setting).groups.flatMap(({ stock, rows }) => rows.map((row) => ({ ...row, stock }))),
      room,
    ),
    scores: shortened(spokenScores(setting), room),
    slits: slitsOf(setting),
    order,
    steps: shortened(order.steps, room),
    ahead: shortened(ahead, room),
    table: laidOut(spokenSetting(setting)),
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

/** The scores as they are read out: lines at an angle are only spoken of, for nobody draws them by ear. */
function spokenScores(setting: Setting): readonly object[] {
  const { say, phrase } = setting.voice;
  return (scoreList(setting)?.pieces ?? []).map(({ rows, slants, ...piece }) => ({
    ...piece,
    rows: rows.map((row) => ({ ...row, words: phrase('labeled', { label: row.words }) })),
    slants: slants.length > 0 && say('cue-slants'),
  }));
}

/** The very cautions of the sheet, as short as they can be said aloud. */
function spokenCautions({ project, voice }: Setting): readonly object[] {
  const allergens = allergensHeld(project, voice);
  return cautionsFor(project, voice).map(({ id, heading }) => ({
    heading,
    text: voice.say(`cue-caution-${id}`, { allergens }),
  }));
}
