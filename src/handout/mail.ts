import { type Editions, ownEdition, pairs, sidesOf, type Twin, twin } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import { printDecimal } from '../measure/print.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import type { Piece } from '../project/model.ts';
import { isMailedAs, linksOf } from '../shape/links.ts';
import { isSolid } from '../shape/outer-size.ts';
import { ownNet } from '../shape/shapes.ts';
import { pieceNamed } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { asConverted, onRulers } from '../words/twins.ts';
import { waysOf } from '../words/variants.ts';
import { mainPiece } from './finished-size.ts';
import { closestFits, fitIn, type Series } from './mail/envelopes.ts';
import { type Mailed, mailedPiece } from './mail/mailed.ts';
import { type LetterVerdict, letterVerdict, US_LETTER } from './mail/us-letter.ts';
import { inVariant, type Setting } from './setting.ts';

/** What whoever mails the project wants to know. */
type MailView = {
  readonly things: readonly MailedView[];
  /** The limits the verdicts follow, with their source and day. */
  readonly limits: SafeHtml;
};

type MailedView = {
  /** `Closed, the card is 5 1/2 × 4 1/4 in (…) and about 1.6 mm thick.` */
  readonly words: SafeHtml;
  readonly envelopes: readonly EnvelopeRow[];
  /** No common envelope takes it. */
  readonly isTooLarge: boolean;
};

/** The facts of every card and flat thing of a project, and of its envelopes; undefined where it makes none. */
export function mailView(setting: Setting): MailView | undefined {
  const { editions, voice } = setting;
  const alone = (variant: Editions): readonly MailedView[] => thingsOf(inVariant(setting, variant));
  const all = waysOf(editions, voice, alone, (things) => JSON.stringify(things)).flatMap(
    ({ value, first, of }) => (of === undefined ? value : thingsOf(inVariant(setting, first, of))),
  );
  return all.length > 0 ? { things: all, limits: limitsOf(setting) } : undefined;
}

/** Of one variant. */
function thingsOf(setting: Setting): readonly MailedView[] {
  const { project } = setting;
  const loose = [...project.pieces.values()].filter(({ on }) => !on);
  const cards = loose.filter((piece) => goesInEnvelope(setting, piece));
  const envelopes = loose
    .filter((piece) => isMailedAs('envelope', piece))
    .flatMap((piece) => twinOf(setting, piece, []) ?? []);
  // With several cards nobody knows in which of them a loose sheet lies.
  const inside = cards.length === 1 ? loose.filter(({ body }) => body.kind === 'flat') : [];
  const things = cards.flatMap((piece): MailedView[] => {
    const others = inside.filter((sheet) => sheet !== piece);
    const thing = twinOf(setting, piece, others);
    if (!thing) return [];
    const rows = rowsFor(setting, thing, envelopesFor(setting, piece, envelopes));
    return [{ words: wordsOf(setting, thing), envelopes: rows, isTooLarge: rows.length === 0 }];
  });
  return things.length > 0 ? things : envelopes.map((envelope) => envelopeView(setting, envelope));
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

/** A card, a net that closes flat, or the flat piece that the whole project is about. */
function goesInEnvelope({ editions }: Setting, piece: Piece): boolean {
  const net = ownNet(ownEdition(editions).shapes.nets, piece.id.value);
  if (!net) return false;
  if (piece.body.kind === 'form' && net.folds.length > 0) return isMailedAs('card', piece);
  if (net.folds.length > 0) return !isSolid(net);
  return mainPiece(editions)?.id.value === piece.id.value;
}

function twinOf({ editions }: Setting, piece: Piece, inside: readonly Piece[]): MailedTwin | undefined {
  return twin(editions, (edition) => mailedPiece(edition, piece, inside));
}

/** An envelope alone is mailed as it is, with nothing in it that is known of. */
function envelopeView(setting: Setting, envelope: MailedTwin): MailedView {
  const { size, thickness, grams } = envelope[setting.editions.own];
  const letter = setting.voice.say(`mail-${verdictOf(size, thickness, grams)}`);
  const words = [wordsOf(setting, envelope), setting.voice.phrase('mail-alone', { letter })];
  return { words: SafeHtml.join(words, ' '), envelopes: [], isTooLarge: false };
}

function wordsOf(setting: Setting, thing: MailedTwin): SafeHtml {
  const { editions, measures, voice } = setting;
  const { piece, isFolded, thickness, grams } = thing[editions.own];
  const size = measures.both(longFirst({ inch: thing.inch.size, metric: thing.metric.size }));
  const values = {
    piece: pieceNamed(piece.id.value, voice.say),
    size,
    thickness: thicknessText(setting, thickness),
  };
  const words = voice.phrase(isFolded ? 'mail-closed' : 'mail-flat', values);
  if (grams === undefined) return words;
  return SafeHtml.join([words, voice.phrase('mail-weight', { grams: Math.ceil(grams) })], ' ');
}

/** Tenths of a millimeter, hundredths of an inch: an estimate needs no ruler. */
function thicknessText({ voice, measures }: Setting, thickness: Length): string {
  const { figure } = voice.say;
  const [first = '', second] = measures.shown.map((edition) =>
    edition === 'inch'
      ? voice.say('drawing-in', { length: figure(printDecimal(thickness, 'in', 2)) })
      : voice.say('drawing-mm', { length: figure(printDecimal(thickness, 'mm', 1)) }),
  );
  return second === undefined ? first : voice.say('drawing-both', { first, second });
}

function limitsOf({ measures, voice }: Setting): SafeHtml {
  const { asOf, least, most, mostOunces, ratio } = US_LETTER;
  const { figure } = voice.say;
  const same = (length: Length): Twin => asConverted({ inch: length, metric: length }, 'inch');
  return voice.phrase('mail-limits', {
    least: measures.both([same(least.length), same(least.height)]),
    most: measures.both([same(most.length), same(most.height), same(most.thickness)]),
    ounces: figure(String(mostOunces)),
    short: figure(String(ratio.least / 10)),
    long: figure(String(ratio.most / 10)),
    date: voice.date(asOf),
  });
}

/** An envelope that a thing goes in, and what the two then count as. */
type EnvelopeRow = {
  readonly name: string;
  readonly size: SafeHtml;
  /** `3/8 × 1/8 in (9 × 3 mm) to spare: snug`. */
  readonly spare: SafeHtml;
  readonly letter: string;
};

type MailedTwin = Twin<Mailed>;

/** An envelope, made or bought. */
type Outside = {
  readonly name: string;
  readonly size: Twin<Size>;
  /** The edition a bought one is sized in, whose other size is a conversion. */
  readonly given?: EditionName;
  /** About what its own paper adds to the thickness, and to the weight where that is known. */
  readonly paper: Length;
  readonly grams: number;
};

/** About what the two sides of a bought envelope add; their few grams are not reckoned. Common practice, no source. */
const BOUGHT: Length = Length.of(1, 4, 'mm');
/** The avoirdupois ounce: 1/16 of 453.59237 g (NIST SP 811, B.8). */
const GRAMS_OF_OUNCE = 28.349523125;

const SERIES: readonly Series[] = ['iso', 'north-america'];

/** The project's own envelopes that a thing goes in, then the common ones nearest to its size. */
function rowsFor(setting: Setting, thing: MailedTwin, own: readonly MailedTwin[]): readonly EnvelopeRow[] {
  const made = own.map((envelope) => madeEnvelope(setting, envelope));
  const bought = SERIES.flatMap((series) =>
    closestFits(thing[setting.editions.own], series).map(
      ({ envelope: { name, size } }): Outside => ({
        name,
        size: { inch: size, metric: size },
        given: series === 'iso' ? 'metric' : 'inch',
        paper: BOUGHT,
        grams: 0,
      }),
    ),
  );
  return [...made, ...bought].flatMap((outside) => rowOf(setting, thing, outside) ?? []);
}

function madeEnvelope({ editions, voice }: Setting, envelope: MailedTwin): Outside {
  const { piece, thickness, grams = 0 } = envelope[editions.own];
  return {
    name: voice.say('mail-own', { piece: pieceNamed(piece.id.value, voice.say) }),
    size: { inch: envelope.inch.size, metric: envelope.metric.size },
    paper: thickness,
    grams,
  };
}

/** Undefined where the thing does not go in, in either edition. */
function rowOf(setting: Setting, thing: MailedTwin, outside: Outside): EnvelopeRow | undefined {
  const { editions, measures, voice } = setting;
  const { name, size, given, paper } = outside;
  const inch = fitIn(thing.inch, { name, size: size.inch });
  const metric = fitIn(thing.metric, { name, size: size.metric });
  if (!inch || !metric) return undefined;
  // Room to move, which nobody measures.
  const spare = sidesOfBoth({ inch: inch.spare, metric: metric.spare }).map(onRulers);
  const isSnug = [inch, metric].some(({ ease }) => ease === 'snug');
  const own = thing[editions.own];
  const grams = own.grams === undefined ? undefined : own.grams + outside.grams;
  const verdict = verdictOf(size[editions.own], own.thickness.plus(paper), grams);
  return {
    name,
    size: measures.both(longFirst(size).map((side) => (given ? asConverted(side, given) : side))),
    spare: voice.phrase(isSnug ? 'mail-snug' : 'mail-spare', { spare: measures.both(spare) }),
    letter: voice.say(`mail-${verdict}`),
  };
}

/** The address is taken to run along the longer side. */
function verdictOf({ width, height }: Size, thickness: Length, grams: number | undefined): LetterVerdict {
  const [length, across] = [Length.max(width, height), Length.min(width, height)];
  const ounces = grams === undefined ? undefined : grams / GRAMS_OF_OUNCE;
  return letterVerdict({ length, height: across, thickness, ounces });
}

/** A size as envelopes are named: the longer side first, whichever way the thing is drawn. */
function longFirst({ inch, metric }: Twin<Size>): readonly Twin[] {
  const size = sidesOfBoth({ inch, metric });
  return inch.width.lessThan(inch.height) ? size.toReversed() : size;
}

function sidesOfBoth({ inch, metric }: Twin<Size>): readonly Twin[] {
  return pairs({ inch: sidesOf(inch), metric: sidesOf(metric) });
}
