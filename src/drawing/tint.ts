/** `#rrggbb` mixed with white until lines and letters on it stay plain; white for paper of no known color. */
export function tint(color = '#ffffff'): string {
  return mixed(color, (channel) => 255 - (255 - channel) * 0.28);
}

/** `#rrggbb` as a face of something solid has it, `shade` from 0 (in the dark) to 1 (in full light). */
export function shaded(color: string, shade: number): string {
  return mixed(color, (channel) => channel * (1 - (1 - shade) * 0.34));
}

/** A color that can't be read is white. */
function mixed(color: string, mix: (channel: number) => number): string {
  const channels = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu.exec(color)?.slice(1) ?? ['ff', 'ff', 'ff'];
  const written = channels.map((hex) =>
    Math.round(mix(Number.parseInt(hex, 16)))
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${written.join('')}`;
}
