import { type Measurement, scanMeasurements } from '../measure/scan.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import type { Setting } from './setting.ts';

/** Running text cut up: plain stretches, and measurements with their twins. */
export type TextPart = string | SafeHtml;

/** What stands between two measurements that a person paired by hand: `1/8 in (3 mm)`, or `1/8 in or 3 mm` in words. */
const PAIRED = /^[(/=]$/u;

/** Gives every measurement of a text its twin, but leaves alone those that have one already; sets quotation marks. */
export function measuredText(
  text: string,
  { finder, measures, voice }: Pick<Setting, 'finder' | 'measures' | 'voice'>,
): readonly TextPart[] {
  const found = scanMeasurements(text);
  const parts: TextPart[] = [];
  // What follows a measurement follows a word: a quotation mark there closes.
  const set = (part: string, first: boolean): string =>
    first ? typographic(part, voice.language) : typographic(`x${part}`, voice.language).slice(1);
  let end = 0;
  found.forEach((measurement, index) => {
    const isDouble = [found[index - 1], found[index + 1]].some((other) =>
      isPaired(text, measurement, other, voice),
    );
    if (isDouble) return;
    parts.push(set(text.slice(end, measurement.start), end === 0));
    parts.push(measures.both(finder(measurement.lengths, measurement.unit)));
    end = measurement.end;
  });
  parts.push(set(text.slice(end), end === 0));
  return parts.filter((part) => part !== '');
}

/** The same as markup, for a text that is not Markdown: a supply, a caption. */
export function measuredHtml(
  text: string,
  reading: Pick<Setting, 'finder' | 'measures' | 'voice'>,
): SafeHtml {
  return SafeHtml.join(measuredText(text, reading).map((part) => html`${part}`));
}

function isPaired(text: string, one: Measurement, other: Measurement | undefined, { say }: Voice): boolean {
  if (!other || (one.unit === 'in') === (other.unit === 'in')) return false;
  const [first, second] = one.start < other.start ? [one, other] : [other, one];
  const between = text.slice(first.end, second.start).trim();
  return PAIRED.test(between) || between === say('paired-or');
}
