import { type Measurement, scanMeasurements } from '../measure/scan.ts';
import type { Measures } from './measures.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { TwinFinder } from './twins.ts';

/** Running text cut up: plain stretches, and measurements with their twins. */
export type TextPart = string | SafeHtml;

/** What stands between two measurements that a person paired by hand: `1/8 in (3 mm)`, `1/8 in or 3 mm`. */
const PAIRED = /^\s*(?:\(|\/|or\b|=)\s*$/u;

/** Gives every measurement of a text its twin, but leaves alone those that have one already. */
export function measuredText(text: string, finder: TwinFinder, measures: Measures): readonly TextPart[] {
  const found = scanMeasurements(text);
  const parts: TextPart[] = [];
  let end = 0;
  found.forEach((measurement, index) => {
    if (isPaired(text, measurement, found[index + 1]) || isPaired(text, found[index - 1], measurement))
      return;
    parts.push(text.slice(end, measurement.start));
    parts.push(measures.both(finder.find(measurement.lengths, measurement.unit)));
    end = measurement.end;
  });
  parts.push(text.slice(end));
  return parts.filter((part) => part !== '');
}

/** The same as markup, for a text that is not Markdown: a supply, a caption. */
export function measuredHtml(text: string, finder: TwinFinder, measures: Measures): SafeHtml {
  return SafeHtml.join(measuredText(text, finder, measures).map((part) => html`${part}`));
}

function isPaired(text: string, one: Measurement | undefined, other: Measurement | undefined): boolean {
  if (!one || !other || (one.unit === 'in') === (other.unit === 'in')) return false;
  return PAIRED.test(text.slice(one.end, other.start));
}
