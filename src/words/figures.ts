import type { Length, Unit } from '../measure/length.ts';
import { printMetric, roundedSign, rulerInches } from '../measure/print.ts';
import { rulerMark } from '../measure/round.ts';
import { type EditionName, type MetricUnit, UNIT_OF } from '../measure/ruler-unit.ts';
import type { Say } from './labels.ts';

/** What the lengths of an edition are said in. */
export function unitIn(edition: EditionName, { metric }: Say): Unit {
  return edition === 'inch' ? 'in' : metric;
}

/** A length as a ruler shows it, cut up so that a true fraction can be set: `−`, `2`, `11/16`. */
type RulerFigure = {
  /** `≈` where it is only near the length, `−` below zero. */
  readonly sign: string;
  /** Nothing where the fraction is all there is. */
  readonly whole: string;
  readonly fraction?: string;
};

/** @param metric what a metric length is said in, if not what the project is. */
export function figureOf(
  length: Length,
  edition: EditionName,
  say: Say,
  metric: MetricUnit = say.metric,
): RulerFigure {
  const rounded = roundedSign(length, UNIT_OF[edition]);
  if (edition === 'metric') return { sign: rounded, whole: say.figure(printMetric(length, metric)) };
  const { negative, whole, numerator, denominator } = rulerInches(length);
  const sign = `${rounded}${negative ? '−' : ''}`;
  if (numerator === 0n) return { sign, whole: String(whole) };
  return { sign, whole: whole === 0n ? '' : String(whole), fraction: `${numerator}/${denominator}` };
}

/** The plural category in which lengths are said; several together by the last, where that tells more than that they are many. */
export function pluralOf(lengths: readonly Length[], edition: EditionName, say: Say): Intl.LDMLPluralRule {
  const [last] = lengths.slice(-1);
  if (!last) return 'other';
  const category = pluralOfLength(last, edition, say);
  return lengths.length > 1 && category === 'one' ? 'other' : category;
}

function pluralOfLength(length: Length, edition: EditionName, say: Say): Intl.LDMLPluralRule {
  if (edition === 'metric') {
    const shown = rulerMark(length, 'mm').in(say.metric);
    return say.plural(Number(shown.numerator) / Number(shown.denominator));
  }
  const { whole, numerator } = rulerInches(length);
  if (numerator === 0n) return say.plural(Number(whole));
  return whole === 0n ? say.pluralOfPart : say.plural(length.mm / 25.4);
}
