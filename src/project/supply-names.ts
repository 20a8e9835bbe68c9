import type { Supply, SupplyKind } from './supply.ts';

/** A supply of a kind by its item, or by what tells it apart: `wheat` is the `Wheat stamp`, `moss` the `Moss dye ink`. */
export function supplyNamed(supplies: readonly Supply[], kind: SupplyKind, name: string): Supply | undefined {
  return supplyCalled(
    supplies.filter((supply) => supply.kind.value === kind),
    name,
  );
}

/** The same of any kind: `bone folder`, `strong tape`. Of several the one of the fewest words. */
export function supplyCalled(supplies: readonly Supply[], name: string): Supply | undefined {
  const words = wordsOf(name);
  const having = supplies.filter(({ item }) => {
    const own = wordsOf(item.value);
    return words.length > 0 && words.every((word) => own.includes(word));
  });
  return having.toSorted((a, b) => wordsOf(a.item.value).length - wordsOf(b.item.value).length)[0];
}

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
