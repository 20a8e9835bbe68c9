import { type Editions, ownEdition } from '../edition/editions.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** What is the same in some of a project's variants. */
export type Way<T> = {
  readonly value: T;
  /** The names of those variants as a person says them: `small and large`; undefined where it is so in all. */
  readonly of: string | undefined;
  /** Whether each of the variants, in their order, has it so; and the editions of the first that has. */
  readonly has: readonly boolean[];
  readonly first: Editions;
};

/** The editions of every variant, each without the others; of a project that has none, its own. */
export function variantsOf(editions: Editions): readonly Editions[] {
  const variants =
    apart.get(editions) ?? [editions, ...editions.others].map((each) => ({ ...each, others: [] }));
  apart.set(editions, variants);
  return variants;
}

/** Always the same, so that what is drawn of one is drawn once. */
const apart = new WeakMap<Editions, readonly Editions[]>();

/** What the variants of a project are called on paper; nothing where it has none. */
export function variantNames(editions: Editions): readonly string[] {
  return variantsOf(editions).flatMap((each) => ownEdition(each).project.variant?.name ?? []);
}

/**
 * Every way that something is in a project's variants: one where all agree. A variant that hasn't got it is in none.
 * @param print tells apart what is different.
 */
export function waysOf<T>(
  editions: Editions,
  voice: Voice,
  pick: (variant: Editions, index: number) => T | undefined,
  print: (value: T) => string = String,
): readonly Way<T>[] {
  const names = variantNames(editions);
  const picked = variantsOf(editions).map((first, index) => {
    const value = pick(first, index);
    return value === undefined ? undefined : { value, first, key: print(value) };
  });
  return picked.flatMap((each, index): Way<T>[] => {
    if (!each || picked.findIndex((other) => other?.key === each.key) < index) return [];
    const { value, first, key } = each;
    const has = picked.map((other) => other?.key === key);
    const of = has.every(Boolean) ? undefined : voice.list(names.filter((_, place) => has[place])).text;
    return [{ value, first, has, of }];
  });
}

/**
 * The same within a line: `small 2 × 3 in, large 3 × 4 in`, or sentences behind a colon each; once where all agree,
 * undefined where none has it.
 */
export function sayWays(
  editions: Editions,
  voice: Voice,
  pick: (variant: Editions, index: number) => SafeHtml | undefined,
  between: ', ' | ': ' = ', ',
): SafeHtml | undefined {
  const ways = waysOf(editions, voice, pick);
  if (ways.length === 0) return undefined;
  const isLine = between === ', ';
  const told = ways.map(({ value, of }) => {
    if (of === undefined) return value;
    const label = isLine ? of : voice.say('labeled', { label: of });
    return html`<span class="variant">${label}</span> ${value}`;
  });
  return SafeHtml.join(told, isLine ? between : ' ');
}

/** A piece that is not alike in all variants, with the names of those it is of: `box (large)`. */
export function ofVariants(piece: string, of: string | undefined, { say }: Voice): string {
  return of === undefined ? piece : say('piece-variant', { piece, variant: of });
}
