import { accentOf } from '../drawing/accent.ts';
import { type Editions, ownEdition } from '../edition/editions.ts';
import { allergensHeld, cautionsFor } from '../handout/cautions.ts';
import { cssString, marginBox, PAPER_SIZE, pageOf, type Styles, styleElements } from '../handout/css.ts';
import { type CutRow, cutList } from '../handout/cut-list.ts';
import type { PageHead, Renderer } from '../handout/render.ts';
import { revisionTitle } from '../handout/revision.ts';
import { type ScoredPiece, scoreList } from '../handout/score-list.ts';
import { type Setting, settingOf } from '../handout/setting.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Ledger } from '../project/ledger.ts';
import type { Paper, Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { type CardRoom, type Shortened, shortened } from './room.ts';
import {
  type AheadStep,
  aheadSteps,
  type CueStep,
  type RunningOrder,
  runningOrder,
} from './running-order.ts';
import { laidOut, papersLaid, type TableItem } from './table.ts';

/** What a cue card is made from. */
type CueInput = {
  readonly editions: Editions;
  readonly site: Site;
  readonly labels: Labels;
  readonly ledger: Ledger;
  readonly styles: Styles;
};

/** What the template of the card prints. */
type CueCard = PageHead & {
  readonly title: string;
  readonly day: string | undefined;
  readonly hours: string;
  readonly room: CardRoom;
  readonly cuts: Shortened<CueCut>;
  readonly scores: Shortened<ScoredPiece>;
  readonly order: RunningOrder;
  readonly steps: Shortened<CueStep>;
  readonly ahead: Shortened<AheadStep>;
  readonly papers: string;
  readonly table: readonly TableItem[];
  readonly cautions: readonly SpokenCaution[];
  /** What was left out for want of room, and where it is to be found. */
  readonly missing: readonly string[];
};

/** A row of the sheet's own cut list, and the paper it is cut from. */
type CueCut = Pick<CutRow, 'name' | 'times' | 'lead' | 'second'> & {
  readonly stock: string | undefined;
};

/** The demonstrator's own card of a project, as far as there is room for it. Leads with the edition as written. */
export function cueCard({ editions, site, labels, ledger, styles }: CueInput, room: CardRoom): CueCard {
  // Large print is set in the edition as written too, and nothing in it is only for a screen.
  const setting = settingOf(editions, 'large-print', labels, new Map());
  const { project, voice } = setting;
  const order = runningOrder(setting, site.sessions?.at?.value);
  const { start, end } = order;
  const revision = ledger.revisions.at(-1);
  const foot = [site.title, ...(revision ? [revisionTitle(revision, voice)] : [])].join(' · ');
  const [paper = 'letter'] = site.paper;
  return {
    language: voice.language,
    documentTitle: cueTitle(editions, labels),
    description: voice.say('cue-private'),
    styles: styleElements(styles, cueRules(setting, paper, room, foot)),
    scripts: [],
    title: typographic(project.title.value, voice.language),
    day: project.session && voice.day(project.session.value),
    hours: voice.say(order.isOpen ? 'cue-hours-open' : 'cue-hours', { start, end }),
    room,
    cuts: shortened(cuts(setting), room),
    scores: shortened(scoreList(setting)?.pieces ?? [], room),
    order,
    steps: shortened(order.steps, room),
    ahead: shortened(aheadSteps(setting), room),
    papers: papersLaid(setting).join(', '),
    table: laidOut(setting),
    cautions: spokenCautions(setting),
    missing: missing(setting, order, room),
  };
}

/** The card's name, for the title of its PDF. */
export function cueTitle(editions: Editions, labels: Labels): string {
  const title = ownEdition(editions).project.title.value;
  return `${title}: ${voiceOf(labels).say('cue-card')}`;
}

/** The card as a document to be printed. */
export function renderCueCard(card: CueCard, renderer: Renderer, labels: Labels): string {
  return renderer.render('cue-card', card, voiceOf(labels).say);
}

function cuts(setting: Setting): CueCut[] {
  return cutList(setting).groups.flatMap(({ stock, rows }) =>
    rows.map(({ name, times, lead, second }) => ({ name, times, lead, second, stock })),
  );
}

/** Only what there was and the room had no place for. */
function missing(setting: Setting, order: RunningOrder, room: CardRoom): readonly string[] {
  const { project, voice } = setting;
  const { supplies } = project;
  const said = [...order.steps, ...aheadSteps(setting), { notes: order.opening }];
  const cautions = !room.stepCautions && order.steps.some((step) => step.cautions.length > 0);
  const instead = room.table && !room.instead && supplies.some((supply) => supply.instead);
  const table = !room.table && supplies.length > 0;
  const notes = !room.notes && said.some((each) => each.notes.length > 0);
  return [
    ...(cautions ? [voice.say('cue-missing-cautions')] : []),
    ...(instead ? [voice.say('cue-missing-instead')] : []),
    ...(table ? [voice.say('cue-missing-table')] : []),
    ...(notes ? [voice.say('cue-missing-notes', { file: project.file.path })] : []),
  ];
}

/** The paper, the type and the colour of one card; `foot` runs along the bottom of its pages. */
function cueRules(setting: Setting, paper: Paper, { points }: CardRoom, foot: string): string {
  const { color, tint } = accentOf(paperColor(setting.project));
  return `:root { --accent: ${color}; --tint: ${tint}; font-size: ${points}pt; }
@page {
  size: ${PAPER_SIZE[paper]};
  ${marginBox('bottom-left', cssString(foot), '10pt')}
  ${marginBox('bottom-right', pageOf(setting.voice), '10pt')}
}`;
}

/** A caution as short as it can be said aloud. */
type SpokenCaution = { readonly heading: string; readonly text: string };

/** The very cautions of the sheet. */
function spokenCautions({ project, voice }: Setting): readonly SpokenCaution[] {
  const allergens = allergensHeld(project, voice);
  return cautionsFor(project, voice).map(({ id, heading }) => ({
    heading,
    text: voice.say(`cue-caution-${id}`, { allergens }),
  }));
}
