import { accentOf } from '../drawing/accent.ts';
import { pageCss, type Styles, styleElements } from '../handout/css.ts';
import type { Fact } from '../handout/facts.ts';
import type { Renderer } from '../handout/render.ts';
import type { Kit } from '../kit/kit.ts';
import type { StockPlan } from '../kit/plan.ts';
import type { Currency } from '../kit/report/json.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { type PieceRow, pieceRows, type StockSection, sheetsNeeded, stockSections } from './sheets.ts';
import { type CostRow, costRows, type ShoppingGroup, shoppingGroups } from './shopping.ts';
import { joined, type KitWords, kitWords } from './words.ts';

/** What a kit's pages are made from. `page` is read on a screen, the papers are printed. */
export type KitInput = {
  readonly kit: Kit;
  readonly site: Site;
  readonly currency: Currency;
  readonly labels: Labels;
  readonly target: 'page' | 'letter' | 'a4';
  readonly styles: Styles;
};

/** What the template of a kit prints. */
export type KitPage = {
  readonly language: string;
  readonly target: string;
  readonly documentTitle: string;
  readonly description: string;
  readonly styles: SafeHtml;
  readonly scripts: readonly string[];
  readonly siteTitle: string;
  readonly title: string;
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
export type PaperRow = {
  readonly name: string;
  readonly color: string | undefined;
  readonly sheets: SafeHtml;
  readonly bound: string;
};

export function kitPage(input: KitInput): KitPage {
  const { kit, site, labels, target } = input;
  const { project, stocks, shopping } = kit;
  const voice = voiceOf(labels);
  const words = kitWords(voice, project.unit === 'in' ? 'inch' : 'metric', input.currency);
  return {
    language: voice.language,
    target,
    documentTitle: kitTitle(kit, labels),
    description: voice.say('kit-description', { title: project.title.value, count: kit.attendees }),
    styles: styleElements(input.styles, ownCss(input, voice)),
    scripts: [],
    siteTitle: site.title,
    title: typographic(project.title.value, voice.language),
    facts: factsOf(kit, words),
    papers: stocks.map((plan) => paperRow(plan, words)),
    pieces: pieceRows(stocks, kit.attendees + kit.spares, words),
    shopping: shoppingGroups(shopping, words),
    costs: costRows(kit.cost, words),
    stocks: stockSections(stocks, words),
    caution: { heading: voice.say('caution-blades'), text: voice.say('caution-blades-text') },
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

function ownCss({ kit, site, target }: KitInput, voice: Voice): string {
  const { project, stocks } = kit;
  const { color, tint } = accentOf(stocks.find(({ stock }) => stock.color)?.stock.color?.value);
  const colors = `:root { --accent: ${color}; --tint: ${tint}; }`;
  if (target === 'page') return colors;
  const state = project.session && voice.say('session-day', { date: voice.date(project.session.value) });
  const margins = { title: project.title.value, site: site.title, address: undefined, state };
  return `${colors}\n${pageCss(target, margins, voice)}`;
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
