import type { Editions } from '../edition/editions.ts';
import type { Say } from '../words/labels.ts';
import type { Drawing } from './canvas.ts';
import type { DrawingStyle } from './style.ts';

type Drawn = Map<string, Drawing | undefined>;

const known = new WeakMap<Editions, WeakMap<Say, Drawn>>();

/**
 * A drawing made the first time it is asked for: a project's papers, its page and its cue card show many alike.
 * @param what Plain data: everything it follows from besides the editions and the style.
 */
export function drawOnce(
  editions: Editions,
  { say, shown, lettering }: DrawingStyle,
  what: unknown,
  draw: () => Drawing | undefined,
): Drawing | undefined {
  const spoken = known.get(editions) ?? new WeakMap<Say, Drawn>();
  const drawn: Drawn = spoken.get(say) ?? new Map();
  known.set(editions, spoken.set(say, drawn));
  const key = JSON.stringify([what, shown, lettering]);
  if (!drawn.has(key)) drawn.set(key, draw());
  return drawn.get(key);
}
