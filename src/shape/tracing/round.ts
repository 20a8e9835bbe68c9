import type { AtSize } from '../../project/sizes-as-written.ts';
import type { Settings } from '../forming/settings.ts';

/** Refuses what is round and not as wide as it is high; `instead` is the outline that may be so. */
export function refuseUnequal(
  settings: Settings,
  { width, height }: AtSize,
  what: string,
  instead?: string,
): void {
  if (width.value.equals(height.value)) return;
  const [wide, high] = [settings.say(width.value), settings.say(height.value)];
  const reason = `${settings.piece} is ${wide} wide and ${high} high, and ${what} is as wide as it is high`;
  const remedy = `make both ${wide} or both ${high}`;
  settings.refuse(height.at, reason, instead ? `${remedy}, or write "shape: ${instead}"` : remedy);
}
