/** `#rrggbb` mixed with white until lines and letters on it stay plain. */
export function tint(color: string): string {
  return mixed(color, (channel) => 255 - (255 - channel) * 0.28);
}

/** `#rrggbb` with a share of black, 0 to 1. */
export function darkened(color: string, share: number): string {
  return mixed(color, (channel) => channel * (1 - share));
}

/** A colour that can't be read is white. */
function mixed(color: string, mix: (channel: number) => number): string {
  const channels = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu.exec(color)?.slice(1) ?? ['ff', 'ff', 'ff'];
  const written = channels.map((hex) =>
    Math.round(mix(Number.parseInt(hex, 16)))
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${written.join('')}`;
}
