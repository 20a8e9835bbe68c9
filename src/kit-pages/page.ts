import type { Fact } from '../handout/facts.ts';
import type { Renderer } from '../handout/render.ts';
import type { Kit, StockPlan } from '../kit/plan.ts';
import type { Labels } from '../words/labels.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { type PieceRow, pieceRows, type StockSection, sheetsNeeded, stockSections } from './sheets.ts';
import { type KitInput, type KitShell, kitShell, wordsFor } from './shell.ts';
import { type CostRow, costRows, type ShoppingGroup, shoppingGroups } from './shopping.ts';
import { joined, type KitWords } from './words.ts';

/** What the template of a kit prints. */
type KitPage = KitShell & {
  readonly facts: readonly Fact[];
  readonly papers: readonly PaperRow[];
  readonly pieces: readonly PieceRow[];
  readonly shopping: readonly ShoppingGroup[];
  readonly costs: readonly CostRow[];
  readonly stocks: readonly StockSection[];
  readonly caution: { readonly heading: string; readonly text: string };
  readonly trimming: SafeHtml | undefined;
};

/** A stock in the summary. */
type PaperRow = {
  readonly name: string;
  readonly color: string | undefined;
  readonly sheets: SafeHtml;
  readonly bound: string;
};

export function kitPage(input: KitInput): KitPage {
  const { kit, labels } = input;
  const { project, stocks, shopping } = kit;
  const { say, date } = voiceOf(labels);
  const words = wordsFor(input);
  return {
    ...kitShell(input, {
      documentTitle: kitTitle(kit, labels),
      description: say('kit-description', { title: project.title.value, count: kit.attendees }),
      state: project.session && say('session-day', { date: date(project.session.value) }),
    }),
    facts: factsOf(kit, words),
    papers: stocks.map((plan) => paperRow(plan, words)),
    pieces: pieceRows(stocks, kit.attendees + kit.spares, words),
    shopping: shoppingGroups(shopping, words),
    costs: costRows(kit.cost, words),
    stocks: stockSections(stocks, words),
    caution: { heading: say('caution-blades'), text: say('caution-blades-text') },
    trimming: trimmingNote(kit, words),
  };
}

/** The kit's name, for the title of its page and its PDF. */
export function kitTitle({ project, attendees }: Kit, labels: Labels): string {
  const { say } = voiceOf(labels);
  return say('kit-title', { title: project.title.value, count: attendees });
}

export function renderKit(page: KitPage, renderer: Renderer, labels: Labels): string {
  return renderer.render('kit', page, voiceOf(labels).say);
}

function factsOf({ project, attendees, spares, weight }: Kit, words: KitWords): readonly Fact[] {
  const { voice } = words;
  const people = voice.count('kit-attendees', attendees);
  const party =
    spares === 0 ? people : voice.say('kit-party', { people, spares: voice.count('kit-spares', spares) });
  const facts: readonly (readonly [string, SafeHtml | undefined])[] = [
    ['kit-for', html`${party}`],
    ['session', project.session && html`${voice.day(project.session.value)}`],
    ['kit-weight', weightFact(weight, attendees + spares, words)],
  ];
  return facts.flatMap(([key, value]) => (value ? [{ term: voice.say(key), value }] : []));
}

function weightFact(
  { gramsPerKit, without }: Kit['weight'],
  kits: number,
  { voice }: KitWords,
): SafeHtml | undefined {
  if (gramsPerKit === 0) return undefined;
  const number = new Intl.NumberFormat(voice.language, { maximumFractionDigits: 0 });
  const known = voice.say('kit-weight-of', {
    each: number.format(gramsPerKit),
    all: number.format(gramsPerKit * kits),
  });
  return joined([
    known,
    ...(without.length > 0 ? [voice.say('kit-weight-without', { stocks: without.join(', ') })] : []),
  ]);
}

function paperRow(plan: StockPlan, words: KitWords): PaperRow {
  const { stock, total, bound, proven, price } = plan;
  const { say } = words.voice;
  const state = price
    ? proven
      ? say('kit-cheapest', { cost: words.money(price.bound) })
      : say('kit-at-least-cost', { cost: words.money(price.bound) })
    : proven
      ? say('kit-fewest', { count: bound })
      : say('kit-at-least', { count: bound, total });
  return { name: stock.name, color: stock.color?.value, sheets: sheetsNeeded(plan, words), bound: state };
}

function trimmingNote(
  { bench: { trimMargin, kerf } }: Kit,
  { voice, length }: KitWords,
): SafeHtml | undefined {
  const notes = [
    ...(trimMargin.sign > 0 ? [voice.phrase('kit-trim-margin', { length: length(trimMargin) })] : []),
    ...(kerf.sign > 0 ? [voice.phrase('kit-kerf', { length: length(kerf) })] : []),
  ];
  return notes.length > 0 ? SafeHtml.join(notes, ' ') : undefined;
}
