import { type Editions, ownEdition, twins } from '../edition/editions.ts';
import type { Project } from '../project/model.ts';
import { linksOf } from '../shape/links.ts';
import type { Fact } from '../words/fact.ts';
import { pieceNamed } from '../words/names.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { asConverted } from '../words/twins.ts';
import { sayWays, variantNames, variantsOf, waysOf } from '../words/variants.ts';
import { finishedSize, mainPiece, makesSeveral } from './finished-size.ts';
import { type Mailing, mailSaid } from './mail.ts';
import { measuredHtml } from './measured-text.ts';
import { inVariant, type Setting } from './setting.ts';
import { readable } from './supplies.ts';

/** What a person asks before starting: how large, how long, how hard, when, for what. */
export function factsOf(setting: Setting, mailing: Mailing): readonly Fact[] {
  const { project, voice } = setting;
  const facts: readonly (readonly [string, SafeHtml | false | undefined])[] = [
    ['variants', variantsSaid(setting)],
    ['finished-size', finishedSaid(setting)],
    ['time', timeNeeded(setting)],
    ['level', project.level && html`${project.level.value}`],
    // A page tells the time, the place and the host with it.
    ['session', setting.target !== 'page' && project.session && html`${voice.day(project.session.value)}`],
    ['occasion', project.occasion && html`${project.occasion.value}`],
    ['holds', held(setting)],
    ['mail', mailSaid(setting, mailing)],
    ['video', videoLink(setting)],
    ['goes-together', togetherOf(setting)],
  ];
  return facts.flatMap(([key, value]) => (value ? [{ term: voice.say(key), value }] : []));
}

/** Of designs of one size; where the sizes differ they name the variants. */
function variantsSaid({ editions, measures, voice }: Setting): SafeHtml | undefined {
  const sizes = waysOf(editions, voice, (variant) => {
    const size = finishedSize(variant);
    return size && measures.both(size);
  });
  const names = variantNames(editions);
  return sizes.length < 2 && names.length > 1 ? voice.list(names) : undefined;
}

/** The address itself, so that it can be typed from paper too. */
function videoLink({ project: { video } }: Setting): SafeHtml | undefined {
  return video && html`<a class="address" href="${video.value}">${readable(video.value)}</a>`;
}

/** Of the main piece, which is named where others fold as well: `card 5 1/2 × 4 1/4 in (…)`. */
function finishedSaid({ editions, measures, voice }: Setting): SafeHtml | undefined {
  const said = sayWays(editions, voice, (variant) => {
    const size = finishedSize(variant);
    const main = makesSeveral(variant) && mainPiece(variant);
    const sides = size && measures.both(size);
    return sides && main ? html`${pieceNamed(main.id.value, voice.say)} ${sides}` : sides;
  });
  const isSolid = variantsOf(editions).every((variant) => (finishedSize(variant)?.length ?? 0) > 2);
  return said && isSolid ? html`${said}, ${voice.say('finished-order')}` : said;
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

/** Where only the number differs between variants, nothing else is said twice. */
function held(setting: Setting): SafeHtml | undefined {
  const { editions, voice } = setting;
  const countIn = (variant: Editions): SafeHtml | undefined => {
    const { holds } = ownEdition(variant).project;
    return holds && html`${holds.count.value}`;
  };
  const isOneCount = waysOf(editions, voice, countIn).length < 2;
  const counts = isOneCount ? undefined : sayWays(editions, voice, countIn);
  const together = (variant: Editions): SafeHtml | undefined => heldIn(inVariant(setting, variant), counts);
  if (waysOf(editions, voice, together).length === 1) return together(editions);
  return sayWays(editions, voice, (variant) => heldIn(inVariant(setting, variant)), ': ');
}

function heldIn(one: Setting, counts?: SafeHtml): SafeHtml | undefined {
  const { project, editions, voice, measures } = one;
  if (!project.holds) return undefined;
  const { item, count } = project.holds;
  const holding = voice.phrase('holds-item', {
    count: counts ?? count.value,
    item: measuredHtml(item, one),
  });
  const size = twins(editions, ({ project: { holds } }) => holds?.size?.map(({ value }) => value));
  if (!size) return holding;
  const sides = measures.both(size.map((side) => asConverted(side, editions.own)));
  return SafeHtml.join([holding, voice.phrase('holds-each', { size: sides })], ', ');
}
