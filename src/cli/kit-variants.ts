import { Refusal } from './terminal.ts';

/** Everybody makes one of each. */
const ALL = 'all';

/**
 * How many attendees make each of a project's variants, by their places. `asked` is what was typed after each
 * `--variant`: a name alone for all the others, a name with a number, or `all`.
 * @throws Refusal where it doesn't come to the attendees, or names none of the variants.
 */
export function variantCounts(
  asked: readonly string[],
  variants: readonly string[],
  attendees: number,
  slug: string,
): readonly number[] {
  if (variants.length === 0) {
    if (asked.length === 0) return [];
    throw new Refusal(`${slug} has no variants: leave --variant out`);
  }
  if (asked.length === 0) throw new Refusal(whichOf(variants, slug));
  if (asked.length === 1 && asked[0] === ALL && !variants.includes(ALL)) return variants.map(() => attendees);
  const wishes = asked.map((text) => wishOf(text, variants, slug));
  const counted = wishes.reduce((sum, { count = 0 }) => sum + count, 0);
  const open = wishes.filter(({ count }) => count === undefined);
  if (open.length > 1)
    throw new Refusal('only one --variant can go without a number, as in --variant small=4 --variant large');
  const rest = attendees - counted;
  if (rest < 0 || (rest > 0 && open.length === 0))
    throw new Refusal(
      `--attendees says ${attendees}, but the variants come to ${counted}: change one of the numbers`,
    );
  return variants.map((name) =>
    wishes.reduce((sum, wish) => sum + (wish.name === name ? (wish.count ?? rest) : 0), 0),
  );
}

/** A variant, and how many make it; without a number all that are left. */
type VariantWish = { readonly name: string; readonly count: number | undefined };

function wishOf(text: string, variants: readonly string[], slug: string): VariantWish {
  const [, typed = '', number] = /^([^=]*)(?:=(.*))?$/su.exec(text) ?? [];
  const wish = typed.trim();
  const lower = wish.toLowerCase();
  const name =
    variants.find((each) => each === wish) ?? variants.find((each) => each.toLowerCase() === lower);
  if (name === undefined)
    throw new Refusal(`${slug} has no variant named "${typed}"; its variants are: ${variants.join(', ')}`);
  if (number === undefined) return { name, count: undefined };
  if (!/^\d{1,4}$/u.test(number.trim()))
    throw new Refusal(`--variant ${name} takes a whole number after the =, not "${number}"`);
  return { name, count: Number(number) };
}

function whichOf(variants: readonly string[], slug: string): string {
  const [first = '', second = first] = variants;
  return `${slug} has the variants ${variants.join(', ')}: say which, as in --variant ${first} for everybody, --variant ${first}=6 --variant ${second} for six of one, or --variant ${ALL} for one of each`;
}
