/** Red, green and blue, 0 to 255. */
export type Rgb = readonly [number, number, number];

/** A color that can't be read is white. */
const WHITE: Rgb = [255, 255, 255];

/** `#rrggbb` mixed with white until lines and letters on it stay plain; white for paper of no known color. */
export function tint(color = '#ffffff'): string {
  return mixed(color, (channel) => 255 - (255 - channel) * 0.28);
}

/** `#rrggbb` as a face of something solid has it, `shade` from 0 (in the dark) to 1 (in full light). */
export function shaded(color: string, shade: number): string {
  return mixed(color, (channel) => channel * (1 - (1 - shade) * 0.34));
}

function mixed(color: string, mix: (channel: number) => number): string {
  const [red, green, blue] = readColor(color) ?? WHITE;
  return writtenColor([mix(red), mix(green), mix(blue)]);
}

export function readColor(text: string): Rgb | undefined {
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu.exec(text);
  if (!digits) return undefined;
  const [, red = '', green = '', blue = ''] = digits;
  return [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
}

export function writtenColor(color: Rgb): string {
  return `#${color.map((channel) => Math.round(channel).toString(16).padStart(2, '0')).join('')}`;
}
