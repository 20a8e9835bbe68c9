import sharp from 'sharp';
import { UnreadableFont } from '../print/fault.ts';
import type { Font } from '../project/font-file.ts';
import { escapeHtml } from '../words/safe-html.ts';
import { opaquePixelsOf, type Pixels } from './pixels.ts';
import { type FontWeight, NAMED_FAMILY, type NamedFont, namedFont, typefaceFiles } from './typeface.ts';

/** A text painted on white. */
type PaintedText = { readonly pixels: Pixels; readonly height: number };

const NAMES: Readonly<Record<FontWeight, string>> = { 400: 'Public Sans', 700: 'Public Sans Bold' };

const STYLES: Readonly<Record<FontWeight, string>> = { 400: '', 700: ' Bold' };

type Style = { readonly weight: FontWeight; readonly color: string; readonly width: number };

/** The family that letters are taken from which our typeface lacks. */
let named: string | undefined;

/** Has letters that our typeface lacks taken from a font from now on, whatever fonts the computer has; without one, from none. */
export async function letterWith(font: Font | undefined): Promise<void> {
  const { file, family }: Partial<NamedFont> = font ? await namedFont(font) : {};
  named = family;
  if (file !== undefined) await announce(file, 400);
}

/** Paints a text in lines no longer than `width` pixels. An empty text is nothing. */
export async function lettering(
  text: string,
  style: Style & { readonly size: number },
): Promise<PaintedText | undefined> {
  const plain = shortened(text.replace(/[^\P{Cc}\n]|\p{Cs}/gu, ' ').trim());
  if (plain === '') return undefined;
  const unbroken = plain.replaceAll(INNER_HYPHEN, `-${WORD_JOINER}`);
  const markup = `<span foreground="${style.color}">${escapeHtml(unbroken)}</span>`;
  const [fontfile = '', ...others] = await typefaceFiles(style.weight);
  for (const other of others) await announce(other, style.weight);
  return paint(markup, style, fontfile);
}

/** A line ends at a space sooner than within `pop-up`. */
const INNER_HYPHEN = /(?<=\p{L})-(?=\p{L})/gu;
const WORD_JOINER = '\u2060';

/** More than a picture has room for, and less than makes one too high to be painted. */
const MOST_CHARACTERS = 400;

function shortened(text: string): string {
  const characters = [...text];
  return characters.length > MOST_CHARACTERS ? `${characters.slice(0, MOST_CHARACTERS).join('')}…` : text;
}

const announced = new Map<string, Promise<unknown>>();

/** A file once painted with is known from then on: letters that the first file lacks are then taken from the others. */
async function announce(file: string, weight: FontWeight): Promise<void> {
  const painted = announced.get(file) ?? paint('-', { weight, color: '#000000', width: 100, size: 10 }, file);
  announced.set(file, painted);
  await painted;
}

async function paint(
  text: string,
  { weight, size, width }: Style & { readonly size: number },
  fontfile: string,
): Promise<PaintedText> {
  // The comma at its end keeps the last word of a family from being taken for a style.
  const font =
    named === undefined ? `${NAMES[weight]} ${size}` : `Public Sans,${named},${STYLES[weight]} ${size}`;
  try {
    const pixels = await opaquePixelsOf(
      sharp({ text: { text, font, fontfile, width, dpi: 72, rgba: true, wrap: 'word-char' } }),
      '#ffffff',
    );
    return { pixels, height: pixels.raw.height };
  } catch (error) {
    // Our own typeface paints whatever is short enough.
    if (named === undefined) throw error;
    throw new UnreadableFont('letters of the named font cannot be painted', NAMED_FAMILY);
  }
}

/**
 * The largest of some sizes at which a text is no higher than `height` pixels; where none is, as much of its beginning as
 * is no higher in the smallest.
 */
export async function fittedLettering(
  text: string,
  sizes: readonly number[],
  height: number,
  style: Style,
): Promise<PaintedText | undefined> {
  for (const size of sizes) {
    const painted = await lettering(text, { ...style, size });
    if (!painted || painted.height <= height) return painted;
  }
  return fittedBeginning(text, height, { ...style, size: Math.min(...sizes) });
}

async function fittedBeginning(
  text: string,
  height: number,
  style: Style & { readonly size: number },
): Promise<PaintedText | undefined> {
  const characters = [...text].slice(0, MOST_CHARACTERS);
  const shorter = `${characters
    .slice(0, Math.floor(characters.length * 0.9))
    .join('')
    .trimEnd()}…`;
  const painted = await lettering(shorter, style);
  if (!painted || painted.height <= height || shorter.length >= text.length) return painted;
  return fittedBeginning(shorter, height, style);
}
