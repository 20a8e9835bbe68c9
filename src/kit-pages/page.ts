import type { CuttingBench } from '../kit/bench.ts';
import type { Kit, StockPlan } from '../kit/plan.ts';
import type { Ref } from '../project/ref.ts';
import type { Fact } from '../words/fact.ts';
import { baseName } from '../words/names.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import { priceTable } from './price.ts';
import { pieceRows, sheetsNeeded, stockSections } from './sheets.ts';
import { type KitInput, type KitPage, kitPageOf, wordsFor } from './shell.ts';
import { costRows, shoppingGroups } from './shopping.ts';
import { joined, type KitWords } from './words.ts';

/** The whole kit: what is cut and bought, what it costs, and how it is cut. */
export function kitPage(input: KitInput): KitPage {
  const { kit } = input;
  const { project, stocks, shopping, attendees } = kit;
  const words = wordsFor(input);
  const { say, date } = words.voice;
  const named = { title: project.title.value, count: attendees };
  const page = {
    title: say('kit-title', named),
    description: say(say.counted('kit-description', attendees), named),
    state: project.session && say('session-day', { date: date(project.session.value) }),
  };
  return kitPageOf(input, 'kit', page, {
    facts: factsOf(kit, words),
    papers: stocks.map((plan) => paperRow(plan, words)),
    pieces: pieceRows(stocks, words),
    shopping: shoppingGroups(shopping, words),
    costs: costRows(kit.cost, words),
    price: priceTable(kit.cost, words),
    stocks: stockSections(stocks, words),
    caution: { heading: say('caution-blades'), text: say('caution-blades-text') },
    trimming: trimmingNote(kit, words),
  });
}

function factsOf({ project, makings, attendees, spares, weight }: Kit, words: KitWords): readonly Fact[] {
  const { voice } = words;
  const people = voice.count('kit-attendees', attendees);
  const party =
    spares === 0 ? people : voice.say('kit-party', { people, spares: voice.count('kit-spares', spares) });
  const facts: readonly (readonly [string, SafeHtml | undefined])[] = [
    ['kit-for', html`${party}`],
    ['variants', variantsMade(makings, voice)],
    ['session', project.session && html`${voice.day(project.session.value)}`],
    ['kit-weight', weightFact(weight, attendees + spares, words)],
  ];
  return facts.flatMap(([key, value]) => (value ? [{ term: voice.say(key), value }] : []));
}

/** `small × 6 and large × 6`. */
function variantsMade(makings: Kit['makings'], voice: Voice): SafeHtml | undefined {
  const made = makings.flatMap(({ variant, attendees }) =>
    variant === undefined ? [] : [`${variant} ${voice.say('cut-times', { count: attendees })}`],
  );
  return made.length > 0 ? voice.list(made) : undefined;
}

function weightFact(
  { gramsPerKit, without }: Kit['weight'],
  kits: number,
  { voice: { say, language } }: KitWords,
): SafeHtml | undefined {
  if (gramsPerKit === 0) return undefined;
  const number = new Intl.NumberFormat(language, { maximumFractionDigits: 0 });
  const [each, all] = [number.format(gramsPerKit), number.format(gramsPerKit * kits)];
  const known = say('kit-weight-of', { each, all });
  const left = without.length > 0 ? [say('kit-weight-without', { stocks: without.join(', ') })] : [];
  return joined([known, ...left]);
}

/** A stock in the summary: its sheets, and how sure it is that no fewer or cheaper ones would do. */
export function paperRow(plan: StockPlan, words: KitWords): object {
  const { stock, total, bound, proven, price } = plan;
  const { say } = words.voice;
  const state = price
    ? say(proven ? 'kit-cheapest' : 'kit-at-least-cost', { cost: words.money(price.bound) })
    : say(proven ? 'kit-fewest' : 'kit-at-least', { count: bound, total });
  return {
    name: typographic(stock.name, words.voice.say),
    color: stock.color?.value,
    sheets: sheetsNeeded(plan, words),
    bound: state,
  };
}

function trimmingNote(kit: Kit, words: KitWords): SafeHtml | undefined {
  const { project, attendees, spares } = kit;
  const { voice } = words;
  const named = (ref: Omit<Ref, 'face'>, perKit: number): SafeHtml =>
    voice.phrase('kit-opening', {
      opening: baseName({ ...ref, face: 'outside' }, voice),
      count: perKit * (attendees + spares),
    });
  const byHand = [...project.pieces.values()].flatMap(({ id, count, openings }) =>
    openings.map(({ name }) => named({ piece: id.value, part: name.value }, count.value)),
  );
  const outlined = [...project.pieces.values()].flatMap(({ id, body, count }) =>
    body.kind === 'flat' && body.outline ? [named({ piece: id.value }, count.value)] : [],
  );
  const notes = [
    ...bladeNotes(kit.bench, words),
    ...(outlined.length > 0 ? [voice.phrase('kit-outlined', { pieces: voice.list(outlined) })] : []),
    ...(byHand.length > 0 ? [voice.phrase('kit-by-hand', { openings: voice.list(byHand) })] : []),
  ];
  return notes.length > 0 ? SafeHtml.join(notes, ' ') : undefined;
}

/** What comes off a sheet before and with each cut. */
export function bladeNotes(
  { trimMargin, kerf }: CuttingBench,
  { voice, length }: KitWords,
): readonly SafeHtml[] {
  return [
    ...(trimMargin.sign > 0 ? [voice.phrase('kit-trim-margin', { length: length(trimMargin) })] : []),
    ...(kerf.sign > 0 ? [voice.phrase('kit-kerf', { length: length(kerf) })] : []),
  ];
}
