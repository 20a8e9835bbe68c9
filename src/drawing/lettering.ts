import type { Length } from '../measure/length.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { figureOf } from '../words/figures.ts';
import type { Say } from '../words/labels.ts';
import { element, escapeText } from './svg.ts';

/** A stretch of text; a fraction is set as `11/16` and made a true one by the page's style. */
type TextRun = {
  readonly text: string;
  readonly fraction?: true;
  /** Where two editions stand together: of which unit it is, or that it stands between them. */
  readonly unit?: 'in' | 'mm' | 'both';
};

/** One line of text. */
export type LabelLine = readonly TextRun[];

/** Lines above one another. */
export type Label = readonly LabelLine[];

/** The distance between two lines of a label, in sizes of the lettering. */
export const LINE_HEIGHT = 1.15;
/** The height of a capital or a digit, in sizes of the lettering. */
export const CAPITAL = 0.72;
/** How far a g hangs under the line, in sizes of the lettering. */
export const DESCENT = 0.22;

const THIN_SPACE = '\u2009';

export function plain(text: string): LabelLine {
  return [{ text }];
}

/** A length as a ruler shows it, with its unit: `3 1/4 in`, `83 mm`. */
export function lengthLettering(length: Length, edition: EditionName, say: Say): LabelLine {
  return withUnit(figureLettering(length, edition, say), edition, say);
}

/** The same without its unit. */
export function figureLettering(length: Length, edition: EditionName, say: Say): LabelLine {
  const { sign, whole, fraction } = figureOf(length, edition, say);
  if (fraction === undefined) return plain(`${sign}${whole}`);
  // A space keeps 3 1/4 from being copied or read aloud as 31/4.
  const lead = `${sign}${whole}${whole && THIN_SPACE}`;
  return [...(lead ? plain(lead) : []), { text: fraction, fraction: true }];
}

/** Figures with the unit of an edition behind them. */
export function withUnit(figures: LabelLine, edition: EditionName, say: Say): LabelLine {
  const [before = '', after = ''] = say(edition === 'inch' ? 'drawing-in' : 'drawing-mm').split('{length}');
  return [{ text: before }, ...figures, { text: after }].filter((run) => run.text !== '');
}

/** What belongs to one edition alone, so that a page can show it without the other. */
export function ofUnit(lettering: LabelLine, unit: NonNullable<TextRun['unit']>): LabelLine {
  return lettering.map((run) => ({ ...run, unit }));
}

/** A safe (slightly generous) width of one line, in sizes of the lettering: drawings are laid out before any font is there. */
export function widthOf(lettering: LabelLine): number {
  return lettering.reduce(
    (total, run) => total + (run.fraction ? fractionWidth(run.text) : textWidth(run.text)),
    0,
  );
}

/** The width of the longest line and the height of all, in sizes of the lettering. */
export function extentOf(label: Label): { readonly width: number; readonly height: number } {
  const width = Math.max(0, ...label.map(widthOf));
  return { width, height: label.length === 0 ? 0 : CAPITAL + (label.length - 1) * LINE_HEIGHT };
}

/** A text broken into lines of at most `width` sizes of the lettering; a longer word stands alone. */
export function wrapped(text: string, width: number): Label {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const joined = [lines.at(-1), word].filter((part) => part !== undefined).join(' ');
    if (lines.length > 0 && widthOf(plain(joined)) <= width) lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  return lines.map(plain);
}

/** The unit that all of a line is in, if there is one. */
export function unitOf(lettering: LabelLine): TextRun['unit'] {
  const [first] = lettering;
  return lettering.every(({ unit }) => unit === first?.unit) ? first?.unit : undefined;
}

/** The children of a `<text>` element, which says itself what unit all of the line is in. */
export function letteringMarkup(lettering: LabelLine): string {
  const whole = unitOf(lettering);
  return lettering
    .map(({ text, fraction, unit }) => {
      const own = { class: fraction && 'fraction', 'data-unit': unit === whole ? undefined : unit };
      return fraction || unit !== whole ? element('tspan', own, escapeText(text)) : escapeText(text);
    })
    .join('');
}

function fractionWidth(text: string): number {
  return 0.3 + 0.36 * (text.length - 1);
}

function textWidth(text: string): number {
  return [...text].reduce((total, character) => total + characterWidth(character), 0);
}

/** Rounded up from the advances of Public Sans at weight 600, measured in a browser. */
function characterWidth(character: string): number {
  if (/[mwMW@%…—≈]/u.test(character)) return 0.97;
  if (/[ijlI.,:;'’|!()\s]/u.test(character)) return 0.33;
  if (/[frtJ/1-]/u.test(character)) return 0.42;
  if (/\p{Lu}/u.test(character)) return 0.78;
  return character.charCodeAt(0) > 0x2fff ? 1.05 : 0.67;
}
