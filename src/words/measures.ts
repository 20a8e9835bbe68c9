import type { Shown, Twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { roundedSign, rulerInches } from '../measure/print.ts';
import { type EditionName, type MetricUnit, UNIT_OF } from '../measure/ruler-unit.ts';
import { figureOf, pluralOf } from './figures.ts';
import { html, SafeHtml } from './safe-html.ts';
import { betweenMembers } from './typographic.ts';
import type { Voice } from './voice.ts';

/** How lengths belong together: `2 × 4 in`; `1, 4, and 9 in` in a sentence; `1, 4, 9 in` in a column. */
type Grouping = 'size' | 'sentence' | 'column';

/** The leading edition's column, and the other's where that is shown. */
export type Columns<T> = { readonly lead: T; readonly second?: T | undefined };

/**
 * Prints lengths that exist in both editions. Each edition's text stands in an element of its own with `data-unit`,
 * so that a page can show one of them alone.
 */
export type Measures = {
  readonly shown: Shown;
  readonly leading: EditionName;
  /** Every edition shown, the second in brackets: `2¼ × 4 in (57 × 102 mm)`. */
  readonly both: (lengths: readonly Twin[], grouping?: Grouping, metric?: MetricUnit) => SafeHtml;
  /** @param metric what a metric length is said in, if not what the project is. */
  readonly alone: (
    lengths: readonly Twin[],
    edition: EditionName,
    grouping?: Grouping,
    metric?: MetricUnit,
  ) => SafeHtml;
  /** Each edition shown, for columns. */
  readonly columns: (lengths: readonly Twin[], grouping?: Grouping) => Columns<SafeHtml>;
  /** What stands above the columns. */
  readonly headings: Columns<{ readonly heading: string; readonly unit: 'in' | 'mm' }>;
};

/**
 * @param spoken whether inches are also written out for screen readers, beside figures hidden from them. Not for
 *   print: what is hidden from a screen reader loses its tag in a PDF.
 */
export function measuresFor(voice: Voice, shown: Shown, spoken: boolean): Measures {
  const alone: Measures['alone'] = (lengths, edition, grouping = 'size', metric = voice.say.metric) => {
    const own = lengths.map((length) => length[edition]);
    const figures = own.map((length) => figureHtml(length, edition, voice, metric));
    const together = joined(figures, grouping, voice, edition === 'inch' ? 'in' : metric);
    if (edition === 'metric' || !spoken)
      return html`<span data-unit="${UNIT_OF[edition]}">${together}</span>`;
    const words = spokenInches(own, grouping, voice);
    return html`<span data-unit="in"><span aria-hidden="true">${together}</span><span class="spoken">${words}</span></span>`;
  };
  const [leading, second] = shown;
  const inColumns = <T>(each: (edition: EditionName) => T): Columns<T> => ({
    lead: each(leading),
    second: second && each(second),
  });
  return {
    shown,
    leading,
    alone,
    headings: inColumns((edition) => ({ heading: voice.say(`cut-${edition}`), unit: UNIT_OF[edition] })),
    columns: (lengths, grouping) => inColumns((edition) => alone(lengths, edition, grouping)),
    both: (lengths, grouping, metric) => {
      const twin = second
        ? html`<span class="twin"><span class="bracket"> (</span>${alone(lengths, second, grouping, metric)}<span class="bracket">)</span></span>`
        : SafeHtml.empty;
      return html`<span class="measure">${alone(lengths, leading, grouping, metric)}${twin}</span>`;
    },
  };
}

/** A length as a ruler shows it, its fraction marked so that the typeface sets it as one figure. */
function figureHtml(length: Length, edition: EditionName, { say }: Voice, metric: MetricUnit): SafeHtml {
  const { sign, whole, fraction } = figureOf(length, edition, say, metric);
  if (fraction === undefined) return html`${sign}${whole}`;
  const set = html`<span class="fraction">${fraction}</span>`;
  return whole === '' ? html`${sign}${set}` : html`<span class="mixed">${sign}${whole} ${set}</span>`;
}

/** A size stays on one line; of a row of positions only the last keeps its unit by it. */
function joined(figures: readonly SafeHtml[], grouping: Grouping, voice: Voice, unit: string): SafeHtml {
  if (grouping === 'size') {
    return html`<span class="figures">${SafeHtml.join(figures, ' × ')} ${unit}</span>`;
  }
  const last = figures.at(-1) ?? SafeHtml.empty;
  const closing = html`<span class="figures">${last} ${unit}</span>`;
  const between = betweenMembers(figures.map(String), voice.say);
  const row = [...figures.slice(0, -1), closing];
  if (grouping === 'column') return SafeHtml.join(row, between);
  if (between === ', ' || row.length < 3) return voice.list(row);
  return voice.list([SafeHtml.join(row.slice(0, -1), between), closing]);
}

function spokenInches(lengths: readonly Length[], grouping: Grouping, voice: Voice): SafeHtml {
  const words = lengths.map((length) => {
    const figure = spokenFigure(length, voice);
    return roundedSign(length, 'in') ? voice.say('drawing-about', { length: figure }) : figure;
  });
  const together =
    grouping === 'size' ? words.join(` ${voice.say('spoken-by')} `) : voice.list(words).toString();
  const { say } = voice;
  return voice.phrase(say.inPlural('spoken-inches', pluralOf(lengths, 'inch', say)), { figures: together });
}

/** `2 and 11 sixteenths`; in a language that sets the unit within, that too. */
function spokenFigure(length: Length, voice: Voice): string {
  const { negative, whole, numerator, denominator } = rulerInches(length);
  const sign = negative ? '−' : '';
  const integer = `${sign}${voice.count('spoken-whole', Number(whole))}`;
  if (numerator === 0n) return integer;
  const fraction = voice.count(`spoken-part-${denominator}`, Number(numerator));
  if (whole > 0n) return voice.say('spoken-mixed', { whole: integer, fraction });
  return `${sign}${denominator === 2n ? voice.say('spoken-half') : voice.say('spoken-fraction', { fraction })}`;
}
