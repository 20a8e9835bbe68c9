/** Red, green and blue, 0 to 255. */
export type Rgb = readonly [number, number, number];

export const WHITE: Rgb = [255, 255, 255];
export const BLACK: Rgb = [0, 0, 0];

/** `#rrggbb` mixed with white until lines and letters on it stay plain; white for paper of no known color. */
export function tint(color = '#ffffff'): string {
  return writtenColor(mix(readColor(color), WHITE, 0.28));
}

/** `#rrggbb` as a face of something solid has it, `shade` from 0 (in the dark) to 1 (in full light). */
export function shaded(color: string, shade: number): string {
  return writtenColor(mix(readColor(color), BLACK, 1 - (1 - shade) * 0.34));
}

/** A color that can't be read is white. */
export function readColor(text: string): Rgb {
  const [, red = 'ff', green = 'ff', blue = 'ff'] =
    /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu.exec(text) ?? [];
  return [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
}

/** `share` of the first color, the rest of the second, each channel rounded. */
export function mix(one: Rgb, other: Rgb, share: number): Rgb {
  const channel = (index: 0 | 1 | 2): number => Math.round(one[index] * share + other[index] * (1 - share));
  return [channel(0), channel(1), channel(2)];
}

export function writtenColor(color: Rgb): string {
  return `#${color.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
}
