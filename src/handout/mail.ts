import { ownEdition, type Twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { printDecimal } from '../measure/print.ts';
import type { Piece } from '../project/model.ts';
import { nameOf } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { isSolid, mainPiece } from './finished-size.ts';
import { isCardForm, isEnvelopeForm, mailedPiece } from './mail/mailed.ts';
import { US_LETTER } from './mail/us-letter.ts';
import { type EnvelopeRow, emptyVerdict, longFirst, type MailedTwin, rowsFor } from './mail-rows.ts';
import type { Setting } from './setting.ts';

/** What whoever mails the project wants to know. */
export type MailView = {
  readonly things: readonly MailedView[];
  /** The limits the verdicts follow, with their source and day. */
  readonly limits: SafeHtml;
};

export type MailedView = {
  /** `Closed, the card is 5 1/2 × 4 1/4 in (…) and about 1.6 mm thick.` */
  readonly words: SafeHtml;
  readonly envelopes: readonly EnvelopeRow[];
  /** No common envelope takes it. */
  readonly isTooLarge: boolean;
};

/** The facts of every card and flat thing of a project, and of its envelopes; undefined where it makes none. */
export function mailView(setting: Setting): MailView | undefined {
  const { project } = ownEdition(setting.editions);
  const loose = [...project.pieces.values()].filter(({ on }) => !on);
  const cards = loose.filter((piece) => goesInEnvelope(setting, piece));
  const envelopes = loose.filter(isEnvelopeForm).flatMap((piece) => twinOf(setting, piece, []) ?? []);
  // With several cards nobody knows in which of them a loose sheet lies.
  const inside = cards.length === 1 ? loose.filter(({ body }) => body.kind === 'flat') : [];
  const things = cards.flatMap((piece) => {
    const others = inside.filter((sheet) => sheet !== piece);
    const thing = twinOf(setting, piece, others);
    return thing ? [cardView(setting, thing, envelopes)] : [];
  });
  const all = things.length > 0 ? things : envelopes.map((envelope) => envelopeView(setting, envelope));
  return all.length > 0 ? { things: all, limits: limitsOf(setting) } : undefined;
}

/** A card, a net that closes flat, or the flat piece that the whole project is about. */
function goesInEnvelope({ editions }: Setting, piece: Piece): boolean {
  const net = ownEdition(editions).shapes.nets.get(piece.id.value);
  if (!net) return false;
  if (piece.body.kind === 'form' && net.folds.length > 0) return isCardForm(piece);
  if (net.folds.length > 0) return !isSolid(net);
  return mainPiece(editions)?.id.value === piece.id.value;
}

function twinOf({ editions }: Setting, piece: Piece, inside: readonly Piece[]): MailedTwin | undefined {
  const inch = mailedPiece(editions.inch, piece, inside);
  const metric = mailedPiece(editions.metric, piece, inside);
  return inch && metric && { inch, metric };
}

function cardView(setting: Setting, thing: MailedTwin, envelopes: readonly MailedTwin[]): MailedView {
  const rows = rowsFor(setting, thing, envelopes);
  return { words: wordsOf(setting, thing), envelopes: rows, isTooLarge: rows.length === 0 };
}

/** An envelope alone is mailed as it is. */
function envelopeView(setting: Setting, envelope: MailedTwin): MailedView {
  const verdict = emptyVerdict(setting, envelope[setting.editions.own]);
  const says = setting.voice.phrase('mail-alone', { letter: verdict });
  return {
    words: SafeHtml.join([wordsOf(setting, envelope), says], ' '),
    envelopes: [],
    isTooLarge: false,
  };
}

function wordsOf(setting: Setting, thing: MailedTwin): SafeHtml {
  const { editions, measures, voice } = setting;
  const { piece, isFolded, thickness, grams } = thing[editions.own];
  const size = measures.both(longFirst({ inch: thing.inch.size, metric: thing.metric.size }));
  const values = { piece: nameOf(piece.id.value), size, thickness: thicknessText(setting, thickness) };
  const words = voice.phrase(isFolded ? 'mail-closed' : 'mail-flat', values);
  if (grams === undefined) return words;
  return SafeHtml.join([words, voice.phrase('mail-weight', { grams: Math.ceil(grams) })], ' ');
}

/** Tenths of a millimetre, hundredths of an inch: an estimate needs no ruler. */
function thicknessText({ voice, measures }: Setting, thickness: Length): string {
  const { figure } = voice.say;
  const mm = voice.say('drawing-mm', { length: figure(printDecimal(thickness, 'mm', 1)) });
  const inch = voice.say('drawing-in', { length: figure(printDecimal(thickness, 'in', 2)) });
  const [first, second] = measures.leading === 'inch' ? [inch, mm] : [mm, inch];
  return voice.say('drawing-both', { first, second });
}

function limitsOf({ measures, voice }: Setting): SafeHtml {
  const { asOf, least, most, mostOunces, ratio } = US_LETTER;
  const { figure } = voice.say;
  const same = (length: Length): Twin => ({ inch: length, metric: length });
  return voice.phrase('mail-limits', {
    least: measures.both([same(least.length), same(least.height)]),
    most: measures.both([same(most.length), same(most.height), same(most.thickness)]),
    ounces: figure(String(mostOunces)),
    short: figure(String(ratio.least / 10)),
    long: figure(String(ratio.most / 10)),
    date: voice.date(asOf),
  });
}
