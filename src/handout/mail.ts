import { ownEdition, type Twin, twin } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import { printDecimal } from '../measure/print.ts';
import type { Size } from '../measure/size.ts';
import type { Piece, Site } from '../project/model.ts';
import { isMailedAs, linksOf } from '../shape/links.ts';
import { isSolid } from '../shape/outer-size.ts';
import { ownNet } from '../shape/sheets.ts';
import { pieceNamed } from '../words/names.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { semicolon } from '../words/typographic.ts';
import { sayWays } from '../words/variants.ts';
import type { Voice } from '../words/voice.ts';
import { closestFits, fitIn, type Series } from './mail/envelopes.ts';
import { type Mailed, mailedPiece } from './mail/mailed.ts';
import { type LetterVerdict, letterVerdict, US_LETTER } from './mail/us-letter.ts';
import { inVariant, type Setting } from './setting.ts';

/**
 * What whoever mails a project wants to know, on one line for each card: the envelopes that take it, how thick and
 * heavy it is and, where its rules are known, what it counts as in each. Undefined for a
 * project of no card and no envelope.
 */
export function mailSaid(setting: Setting, mailing: Mailing): SafeHtml | undefined {
  const { editions, voice } = setting;
  return sayWays(editions, voice, (variant) => linesOf(inVariant(setting, variant), mailing), ': ');
}

/** Of one variant. */
function linesOf(setting: Setting, mailing: Mailing): SafeHtml | undefined {
  const { project, voice } = setting;
  const { inUs } = mailing;
  const loose = [...project.pieces.values()].filter(({ on }) => !on);
  const cards = loose.filter((piece) => isCard(setting, piece));
  const envelopes = loose
    .filter((piece) => isMailedAs('envelope', piece))
    .flatMap((piece) => twinOf(setting, piece, []) ?? []);
  // With several cards nobody knows in which of them a loose sheet lies.
  const inside = cards.length === 1 ? loose.filter(({ body }) => body.kind === 'flat') : [];
  const lines = cards.flatMap((piece) => {
    const thing = twinOf(setting, piece, inside);
    if (!thing) return [];
    const fits = fitsFor(setting, thing, { made: envelopesFor(setting, piece, envelopes), mailing });
    const line = lineOf(setting, thing, envelopesSaid(fits, voice, inUs));
    return cards.length > 1
      ? html`${voice.say('labeled', { label: pieceNamed(piece.id.value, voice.say) })} ${line}`
      : line;
  });
  const alone = cards.length > 0 ? [] : envelopes.map((each) => envelopeAlone(setting, each, inUs));
  const all = [...lines, ...alone];
  if (all.length === 0) return undefined;
  const said = SafeHtml.join(all, semicolon(voice.say));
  return inUs ? voice.phrase('mail-rules', { said, date: voice.date(US_LETTER.asOf) }) : said;
}

/** The envelope that is made for a card; any that is made for none, where there is no such. */
function envelopesFor(
  { editions }: Setting,
  { id }: Piece,
  envelopes: readonly MailedTwin[],
): readonly MailedTwin[] {
  const links = linksOf(ownEdition(editions)).filter(({ way }) => way === 'holds');
  const takes = (twin: MailedTwin, held?: string): boolean =>
    links.some(
      (link) =>
        link.holder.id.value === twin[editions.own].piece.id.value &&
        link.held.id.value === (held ?? link.held.id.value),
    );
  const own = envelopes.filter((each) => takes(each, id.value));
  return own.length > 0 ? own : envelopes.filter((each) => !takes(each));
}

/** A card by its form, or a net that closes flat. */
function isCard({ editions }: Setting, piece: Piece): boolean {
  const net = ownNet(ownEdition(editions).shapes.nets, piece.id.value);
  if (!net || net.folds.length === 0) return false;
  return piece.body.kind === 'form' ? isMailedAs('card', piece) : !isSolid(net);
}

function twinOf({ editions }: Setting, piece: Piece, inside: readonly Piece[]): MailedTwin | undefined {
  return twin(editions, (edition) => mailedPiece(edition, piece, inside));
}

/** An envelope alone is mailed as it is, with nothing in it that is known of. */
function envelopeAlone(setting: Setting, envelope: MailedTwin, inUs: boolean): SafeHtml {
  const { size, thickness, grams } = envelope[setting.editions.own];
  const letter = html`${setting.voice.say(`mail-${verdictOf(size, thickness, grams)}`)}`;
  return lineOf(setting, envelope, inUs ? letter : undefined);
}

/** `A2 (snug), A6: US letter; about 0.03 in (0.7 mm) thick, 10 g`. */
function lineOf(setting: Setting, thing: MailedTwin, goesIn: SafeHtml | undefined): SafeHtml {
  const { editions, voice } = setting;
  const { thickness, grams } = thing[editions.own];
  const thick = voice.phrase('mail-thick', { thickness: thicknessText(setting, thickness) });
  const heavy = grams === undefined ? [] : [voice.phrase('mail-weight', { grams: Math.ceil(grams) })];
  return SafeHtml.join(
    [...(goesIn ? [goesIn] : []), SafeHtml.join([thick, ...heavy], ', ')],
    semicolon(voice.say),
  );
}

/** The envelopes a thing goes in, those together that count as the same. */
function envelopesSaid(fits: readonly MailedFit[], { say }: Voice, inUs: boolean): SafeHtml {
  if (fits.length === 0) return html`${say('mail-none')}`;
  const nameOf = ({ name, isSnug }: MailedFit): string =>
    isSnug ? say('mail-snug', { envelope: name }) : name;
  const verdicts = inUs ? [...new Set(fits.map(({ verdict }) => verdict))] : [undefined];
  const groups = verdicts.map((verdict) => {
    const names = fits.filter((fit) => verdict === undefined || fit.verdict === verdict).map(nameOf);
    return verdict === undefined
      ? names.join(', ')
      : `${say('labeled', { label: names.join(', ') })} ${say(`mail-${verdict}`)}`;
  });
  return html`${groups.join(semicolon(say))}`;
}

/** Tenths of a millimeter, hundredths of an inch: an estimate needs no ruler. */
function thicknessText({ voice, measures }: Setting, thickness: Length): string {
  const { figure } = voice.say;
  const [first = '', second] = measures.shown.map((edition) =>
    edition === 'inch'
      ? voice.say('drawing-in', { length: figure(printDecimal(thickness, 'in', 2)) })
      : `${figure(printDecimal(thickness, 'mm', 1))}\u00a0mm`,
  );
  return second === undefined ? first : voice.say('drawing-both', { first, second });
}

/** An envelope that a thing goes in, and what the two then count as. */
type MailedFit = { readonly name: string; readonly isSnug: boolean; readonly verdict: LetterVerdict };

type MailedTwin = Twin<Mailed>;

/** An envelope, made or bought. */
type Outside = {
  readonly name: string;
  readonly size: Twin<Size>;
  /** About what its own paper adds to the thickness, and to the weight where that is known. */
  readonly paper: Length;
  readonly grams: number;
};

/** About what the two sides of a bought envelope add; their few grams are not reckoned. Common practice, no source. */
const BOUGHT: Length = Length.of(1, 4, 'mm');
/** The avoirdupois ounce: 1/16 of 453.59237 g (NIST SP 811, B.8). */
const GRAMS_OF_OUNCE = 28.349523125;

/** Where a site's people live, as far as the post goes. */
export type Mailing = {
  /** Envelopes that are sold there. */
  readonly series: readonly Series[];
  /** Whether it is the United States, the one country whose rules are known here. */
  readonly inUs: boolean;
};

/** What a site says of it by its money and its paper: where nobody prints on Letter nobody buys an A2 envelope. */
export function mailingFrom({ currency, paper }: Site): Mailing {
  return {
    series: paper.includes('letter')
      ? paper.includes('a4')
        ? ['iso', 'north-america']
        : ['north-america']
      : ['iso'],
    inUs: currency === 'USD' && paper[0] === 'letter',
  };
}

/** The project's own envelopes that a thing goes in, then the common ones nearest to its size. */
function fitsFor(
  setting: Setting,
  thing: MailedTwin,
  { made: own, mailing }: { readonly made: readonly MailedTwin[]; readonly mailing: Mailing },
): readonly MailedFit[] {
  const made = own.map((envelope) => madeEnvelope(setting, envelope));
  const bought = mailing.series.flatMap((series) =>
    closestFits(thing[setting.editions.own], series).map(
      ({ envelope: { name, size } }): Outside => ({
        name: series === 'north-america' && !mailing.inUs ? `US ${name}` : name,
        size: { inch: size, metric: size },
        paper: BOUGHT,
        grams: 0,
      }),
    ),
  );
  return [...made, ...bought].flatMap((outside) => fitOf(setting, thing, outside) ?? []);
}

function madeEnvelope({ editions, voice }: Setting, envelope: MailedTwin): Outside {
  const { piece, thickness, grams = 0 } = envelope[editions.own];
  return {
    name: pieceNamed(piece.id.value, voice.say),
    size: { inch: envelope.inch.size, metric: envelope.metric.size },
    paper: thickness,
    grams,
  };
}

/** Undefined where the thing does not go in, in either edition. */
function fitOf({ editions }: Setting, thing: MailedTwin, outside: Outside): MailedFit | undefined {
  const { name, size, paper } = outside;
  const inch = fitIn(thing.inch, { name, size: size.inch });
  const metric = fitIn(thing.metric, { name, size: size.metric });
  if (!inch || !metric) return undefined;
  const isSnug = [inch, metric].some(({ ease }) => ease === 'snug');
  const own = thing[editions.own];
  const grams = own.grams === undefined ? undefined : own.grams + outside.grams;
  return { name, isSnug, verdict: verdictOf(size[editions.own], own.thickness.plus(paper), grams) };
}

/** The address is taken to run along the longer side. */
function verdictOf({ width, height }: Size, thickness: Length, grams: number | undefined): LetterVerdict {
  const [length, across] = [Length.max(width, height), Length.min(width, height)];
  const ounces = grams === undefined ? undefined : grams / GRAMS_OF_OUNCE;
  return letterVerdict({ length, height: across, thickness, ounces });
}
