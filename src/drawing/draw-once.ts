import type { Editions } from '../edition/editions.ts';
import type { Say } from '../words/labels.ts';
import type { Drawing } from './canvas.ts';
import type { DrawingStyle } from './style.ts';

/**
 * Makes something the first time it is asked for, of the same editions in the same words.
 * @param what Plain data: everything it follows from besides the editions and the style.
 */
type MakeOnce<Made> = (editions: Editions, style: DrawingStyle, what: unknown, make: () => Made) => Made;

export function makerOnce<Made>(): MakeOnce<Made> {
  const known = new WeakMap<Editions, WeakMap<Say, Map<string, { readonly made: Made }>>>();
  return (editions, { say, shown, lettering }, what, make) => {
    const spoken = known.get(editions) ?? new WeakMap<Say, Map<string, { readonly made: Made }>>();
    const own = spoken.get(say) ?? new Map<string, { readonly made: Made }>();
    known.set(editions, spoken.set(say, own));
    const key = JSON.stringify([what, shown, lettering]);
    const found = own.get(key) ?? { made: make() };
    own.set(key, found);
    return found.made;
  };
}

/** A drawing: a project's papers, its page and its cue card show many alike. */
export const drawOnce: MakeOnce<Drawing | undefined> = makerOnce();
