import { BLACK, mix, type Rgb, readColor, WHITE, writtenColor } from './tint.ts';

/** What text needs against its ground at WCAG 2.2 level AA (success criterion 1.4.3). */
const READABLE = 4.5;

/** The color where no stock of the project has one. */
const INK = '#33414e';

/** A color readable on white, and the same color as a faint ground on which it is readable too. */
type Accent = { readonly color: string; readonly tint: string };

/** Darkens a stock's color evenly until it can be read on its tint; a project without colors gets a dark gray. */
export function accentOf(stockColor: string | undefined): Accent {
  const paper = readColor(stockColor ?? INK);
  let color = paper;
  // The tint is darker than white: what can be read on it can be read on white.
  for (let share = 99; contrast(color, tintOf(color)) < READABLE; share -= 1) {
    color = mix(paper, BLACK, share / 100);
  }
  return { color: writtenColor(color), tint: writtenColor(tintOf(color)) };
}

function tintOf(color: Rgb): Rgb {
  return mix(color, WHITE, 0.1);
}

/** The contrast ratio of a color and a darker one, or the other way round, 1 to 21 (WCAG 2.2, "contrast ratio"). */
function contrast(one: Rgb, other: Rgb): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** WCAG 2.2, "relative luminance", with the corrected threshold of May 2021. */
function luminance([red, green, blue]: Rgb): number {
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

function linear(channel: number): number {
  const value = channel / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}
