import type { StockPlan } from '../kit/plan.ts';
import { editionIn } from '../measure/ruler-unit.ts';
import type { Preparation } from '../season/preparation.ts';
import type { Season } from '../season/season.ts';
import type { SeasonSession } from '../season/session.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { bladeNotes, paperRow } from './page.ts';
import { preparationText } from './preparation-text.ts';
import { stockSections } from './sheets.ts';
import { type BenchInput, benchPageOf, type KitPage } from './shell.ts';
import { costRows, shoppingGroups } from './shopping.ts';
import { type KitWords, kitWords } from './words.ts';

type SeasonInput = BenchInput & { readonly season: Season };

/** The whole season: who comes when, what to do by when, what is bought and how it is cut. */
export function seasonPage(input: SeasonInput): KitPage {
  const { sessions, stocks, shopping, cost, preparations, bench } = input.season;
  const words = seasonWords(input);
  const { say } = words.voice;
  const days = spanOf(sessions, words);
  const notes = [html`${say('season-how')}`, ...bladeNotes(bench, words)];
  return benchPageOf(
    input,
    'season',
    {
      heading: say('season-heading'),
      title: say('season-title', { days }),
      description: say('season-description', { days }),
      state: days,
      stocks,
    },
    {
      facts: [
        { term: say('season-sessions'), value: html`${days}` },
        { term: say('kit-for'), value: html`${peopleOf(sessions, words)}` },
      ],
      sessions: sessions.map((each) => sessionRow(each, words)),
      preparations: preparations.map((each) => preparationRow(each, words)),
      papers: stocks.map((plan) => paperRow(plan, wordsOf(plan, input))),
      shopping: shoppingGroups(shopping, words),
      costs: costRows(cost, words, 'season-cost-each'),
      stocks: stocks.flatMap((plan) => stockSections([plan], wordsOf(plan, input))).map(numbered),
      caution: { heading: say('caution-blades'), text: say('caution-blades-text') },
      trimming: SafeHtml.join(notes, ' '),
    },
  );
}

/** In the unit of the first project: sheets are shared, so that one has to do for all. */
export function seasonWords({ season, labels, currency }: SeasonInput): KitWords {
  return kitWords(voiceOf(labels), editionIn(season.sessions[0]?.project.unit ?? 'in'), currency);
}

/** A paper is cut by the ruler of the first project that it is for. */
function wordsOf({ kinds }: StockPlan, { labels, currency }: SeasonInput): KitWords {
  const project = kinds[0]?.pieces[0]?.session?.project;
  return kitWords(voiceOf(labels), editionIn(project?.unit ?? 'in'), currency);
}

function numbered<T extends object>(section: T, index: number): T & { readonly id: string } {
  return { ...section, id: `stock-${index + 1}` };
}

/** From the first day to the last. */
function spanOf(sessions: readonly SeasonSession[], { voice }: KitWords): string {
  const [first, last] = [sessions.at(0), sessions.at(-1)];
  if (!first || !last) return '';
  if (first.session.date === last.session.date) return voice.date(first.session.date);
  return voice.say('season-span', {
    first: voice.date(first.session.date),
    last: voice.date(last.session.date),
  });
}

/** `3 sessions with 12 attendees each`: they may well be the same every time. */
function peopleOf(sessions: readonly SeasonSession[], { voice: { say, count } }: KitWords): string {
  const counts = sessions.map(({ attendees }) => attendees);
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  const people = fewest === most ? count('kit-attendees', most) : say('season-attendees', { fewest, most });
  return say(say.counted('season-for', counts.length), { count: counts.length, people });
}

function sessionRow({ project, session, attendees, variant }: SeasonSession, { voice }: KitWords): object {
  const title = project.title.value;
  return {
    day: voice.day(session.date),
    title: variant === undefined ? title : `${title}: ${variant}`,
    people: voice.count('kit-attendees', attendees),
  };
}

/** By when, what, and the parts of it. */
function preparationRow(preparation: Preparation, words: KitWords): object {
  const { kind, date } = preparation;
  const { what, details } = preparationText(preparation, words);
  // The shopping list stands on the same page.
  return { day: words.voice.day(date), kind, what, details: kind === 'buy' ? [] : details };
}
