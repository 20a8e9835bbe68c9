import { editionIn } from '../measure/ruler-unit.ts';
import { type Measurement, scanMeasurements } from '../measure/scan.ts';
import { spellingIn } from '../project/language.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import type { Setting } from './setting.ts';

/** Running text cut up: plain stretches, and measurements with their twins. */
export type TextPart = string | SafeHtml;

/** What stands between two measurements that a person paired by hand: `1/8 in (3 mm)`, or `1/8 in or 3 mm` in words. */
const PAIRED = /^[(/=]$/u;

/** What measurements are read and said with. */
type ReadSetting = Pick<Setting, 'finder' | 'measures' | 'voice'>;

/**
 * Gives every measurement of a text its twin, but leaves alone those that have one already; sets quotation marks. Where
 * one edition alone is shown, each is said in that: of a pair made by hand the one of its unit stays.
 */
export function measuredText(text: string, { finder, measures, voice }: ReadSetting): readonly TextPart[] {
  const parts: TextPart[] = [];
  // What follows a measurement follows a word: a quotation mark there closes.
  const set = (part: string, first: boolean): string =>
    first ? typographic(part, voice.say) : typographic(`x${part}`, voice.say).slice(1);
  let end = 0;
  for (const mention of mentionsIn(text, voice)) {
    if (mention.said.length > 1 && measures.shown.length > 1) continue;
    const { lengths, unit } =
      mention.said.find((each) => editionIn(each.unit) === measures.leading) ?? mention.said[0];
    parts.push(set(text.slice(end, mention.start), end === 0));
    // Who writes centimeters gets centimeters back.
    parts.push(measures.both(finder(lengths, unit), 'size', unit === 'in' ? undefined : unit));
    end = mention.end;
  }
  parts.push(set(text.slice(end), end === 0));
  return parts.filter((part) => part !== '');
}

/** The same as markup, for a text that is not Markdown: a supply, a caption. */
export function measuredHtml(text: string, reading: ReadSetting): SafeHtml {
  return SafeHtml.join(measuredText(text, reading).map((part) => html`${part}`));
}

/** A text that stands as it was written, but for lengths of an edition that isn't shown. */
export function shownText(text: string, setting: ReadSetting): string {
  return setting.measures.shown.length > 1 ? text : measuredHtml(text, setting).text;
}

/** A measurement, or several of one length in both units, as a person paired them by hand. */
type Mention = {
  readonly start: number;
  readonly end: number;
  readonly said: readonly [Measurement, ...Measurement[]];
};

function mentionsIn(text: string, voice: Voice): readonly Mention[] {
  const mentions: Mention[] = [];
  for (const measurement of scanMeasurements(text, spellingIn(voice.language))) {
    const { start, end } = measurement;
    const before = mentions.at(-1);
    const last = before?.said.at(-1);
    const between = before && text.slice(before.end, start).trim();
    if (before && last && editionIn(last.unit) !== editionIn(measurement.unit) && isPairing(between, voice)) {
      const closed = between === '(' && text[end] === ')' ? end + 1 : end;
      mentions[mentions.length - 1] = { ...before, end: closed, said: [...before.said, measurement] };
    } else mentions.push({ start, end, said: [measurement] });
  }
  return mentions;
}

function isPairing(between = '', { say }: Voice): boolean {
  return PAIRED.test(between) || between === say('paired-or');
}
