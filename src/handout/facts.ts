import { ownEdition, twins } from '../edition/editions.ts';
import type { Project } from '../project/model.ts';
import { linksOf } from '../shape/links.ts';
import { pieceNamed } from '../words/names.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { asConverted } from '../words/twins.ts';
import { finishedSize, mainPiece, makesSeveral } from './finished-size.ts';
import { measuredHtml } from './measured-text.ts';
import type { Setting } from './setting.ts';

/** A line of the sheet's head: `Time`, `45 minutes`. */
export type Fact = { readonly term: string; readonly value: SafeHtml };

/** What a person asks before starting: how large, how long, how hard, when, for what. */
export function factsOf(setting: Setting): readonly Fact[] {
  const { project, voice } = setting;
  const facts: readonly (readonly [string, SafeHtml | undefined])[] = [
    ['finished-size', sizeOf(setting)],
    ['time', timeNeeded(setting)],
    ['level', project.level && html`${project.level.value}`],
    ['session', project.session && html`${voice.day(project.session.value)}`],
    ['occasion', project.occasion && html`${project.occasion.value}`],
    ['holds', held(setting)],
    ['goes-together', togetherOf(setting)],
  ];
  return facts.flatMap(([key, value]) => (value ? [{ term: voice.say(key), value }] : []));
}

/** Of the main piece, which is named where others fold as well: `card 5 1/2 × 4 1/4 in (…)`. */
function sizeOf({ editions, measures, voice }: Setting): SafeHtml | undefined {
  const size = finishedSize(editions);
  const main = makesSeveral(editions) && mainPiece(editions);
  const order = size && size.length > 2 ? html`, ${voice.say('finished-order')}` : '';
  const said = size && html`${measures.both(size)}${order}`;
  return said && main ? html`${pieceNamed(main.id.value, voice.say)} ${said}` : said;
}

/** Waiting is named apart. */
function timeNeeded({ project, voice }: Setting): SafeHtml | undefined {
  const { worked, dry } = minutesOf(project);
  if (worked === 0) return undefined;
  const work = voice.duration(worked);
  return html`${dry > 0 ? voice.say('waiting', { work, waiting: voice.duration(dry) }) : work}`;
}

/** Minutes of work, as the demonstrator says or else the steps' together, and of waiting for what dries. */
export function minutesOf({ minutes, steps }: Project): { readonly worked: number; readonly dry: number } {
  const sum = (what: 'minutes' | 'dry'): number =>
    steps.reduce((total, step) => total + (step[what]?.value ?? 0), 0);
  return { worked: minutes?.value ?? sum('minutes'), dry: sum('dry') };
}

/** `card in envelope`, `band round box`: which of the pieces belong to one another. */
function togetherOf({ editions, voice }: Setting): SafeHtml | undefined {
  const links = linksOf(ownEdition(editions));
  if (links.length === 0) return undefined;
  const said = links.map(({ way, holder, held: { id } }) =>
    voice.phrase(way === 'holds' ? 'goes-holds' : 'goes-around', {
      holder: pieceNamed(holder.id.value, voice.say),
      held: pieceNamed(id.value, voice.say),
    }),
  );
  return SafeHtml.join(said, ', ');
}

function held(setting: Setting): SafeHtml | undefined {
  const { project, editions, voice, measures } = setting;
  if (!project.holds) return undefined;
  const { item, count } = project.holds;
  const holding = voice.phrase('holds-item', {
    count: count.value,
    item: measuredHtml(item, setting),
  });
  const size = twins(editions, ({ project: { holds } }) => holds?.size?.map(({ value }) => value));
  if (!size) return holding;
  const sides = measures.both(size.map((side) => asConverted(side, editions.own)));
  return SafeHtml.join([holding, voice.phrase('holds-each', { size: sides })], ', ');
}
