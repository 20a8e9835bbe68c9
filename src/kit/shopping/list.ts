import type { Unit } from '../../measure/length.ts';
import type { Project } from '../../project/model.ts';
import type { Supply, SupplyKind } from '../../project/supply.ts';
import type { StockPlan } from '../plan.ts';
import { type Amount, countOf, parseAmount } from './amount.ts';
import { type Need, reckon, type ShoppingLine } from './line.ts';

/** Who makes a project: how many people come, and how many kits are made. */
type Party = { readonly project: Project; readonly attendees: number; readonly kits: number };

/** What is kept after a session; one each where nothing else is said. */
const KEPT: readonly SupplyKind[] = ['tool', 'ink', 'stamp', 'die', 'punch'];

/**
 * Paper first, then supplies in the order the projects name them. What is bought alike for several parties is one line:
 * what is used up is added, what is kept goes round.
 */
export function shoppingList(
  parties: readonly Party[],
  plans: readonly StockPlan[],
): readonly ShoppingLine[] {
  const named = parties.flatMap(({ project }) => project.supplies);
  const wanted = parties.flatMap((party) =>
    party.project.supplies.map((supply) => wantOf(asSold(supply, named), party)),
  );
  const alike = new Map<string, readonly Want[]>();
  for (const want of wanted) {
    const key = keyOf(want, wanted);
    alike.set(key, [...(alike.get(key) ?? []), want]);
  }
  const unit = parties[0]?.project.unit ?? 'in';
  return [...plans.flatMap((plan) => stockLines(plan, unit)), ...[...alike.values()].map(supplyLine)];
}

/** A shared supply is sold as it is wherever one of the projects says how. */
function asSold(supply: Supply, named: readonly Supply[]): Supply {
  const { use } = supply;
  if (!use || isSold(supply)) return supply;
  const told = named.find((each) => each.use?.value === use.value && isSold(each));
  if (!told) return supply;
  const { pack, price, onHand } = told;
  return { ...supply, ...(pack && { pack }), ...(price && { price }), ...(onHand && { onHand }) };
}

function isSold({ pack, price, onHand }: Supply): boolean {
  return [pack, price, onHand].some((each) => each !== undefined);
}

/** What a party wants of a supply. */
type Want = {
  readonly supply: Supply;
  /** Of the project that wants it. */
  readonly unit: Unit;
  readonly isKept: boolean;
  /** What one kit takes of it, where that is known; and what all of them do. */
  readonly each?: Amount | undefined;
  readonly needed?: Amount | undefined;
};

/** A line for each size of sheet that is cut. */
function stockLines({ stock, kinds, layouts }: StockPlan, unit: Unit): readonly ShoppingLine[] {
  const own = kinds[0]?.pieces[0]?.session?.project.unit ?? unit;
  const used = stock.sheets.filter((sheet) => layouts.some((layout) => layout.sheet === sheet));
  return used.map((sheet): ShoppingLine => {
    const count = layouts
      .filter((layout) => layout.sheet === sheet)
      .reduce((sum, layout) => sum + layout.count, 0);
    const need: Need = {
      needed: countOf(count),
      onHand: sheet.onHand && countOf(sheet.onHand.value),
      pack: sheet.pack && countOf(sheet.pack.value),
      price: sheet.price?.value,
      priced: 'one',
    };
    const size = { width: sheet.size.width.value, height: sheet.size.height.value };
    return {
      unit: own,
      item: stock.name,
      from: stock.from?.value,
      kind: 'stock',
      sheet: size,
      consumed: true,
      ...reckon(need),
    };
  });
}

function wantOf(supply: Supply, { project: { unit }, attendees, kits }: Party): Want {
  const { kind, share, each } = supply;
  const isKept = each === undefined && (share !== undefined || KEPT.includes(kind.value));
  if (isKept) return { supply, unit, isKept, needed: countOf(Math.ceil(attendees / (share?.value ?? 1))) };
  const amount = each && parseAmount(each.value);
  if (!amount) return { supply, unit, isKept };
  return { supply, unit, isKept, each: amount, needed: { ...amount, value: amount.value.mul(BigInt(kits)) } };
}

/**
 * The same for what is one line: the same thing, bought in the same way and counted in the same unit. A shared supply is
 * one whatever it is called, and so are names and amounts that only a letter's case, a space or a word for the unit
 * tells apart.
 */
function keyOf({ supply, isKept, needed }: Want, wanted: readonly Want[]): string {
  const { use, from, kind, color, share, pack, price, onHand, each } = supply;
  const namesake = use && wanted.find((want) => want.supply.use?.value === use.value)?.supply;
  const item = plain((namesake ?? supply).item.value);
  const unit = needed ? [needed.kind, needed.kind === 'count' ? needed.noun : ''] : [plain(each?.value)];
  const sold = [share?.value, soldAs(pack?.value), price?.value.minor.toString(), soldAs(onHand?.value)];
  return JSON.stringify([item, plain(from?.value), kind.value, color?.value, isKept, ...unit, ...sold]);
}

function plain(text: string | undefined): string | undefined {
  return text?.trim().replace(/\s+/gu, ' ').toLowerCase();
}

function soldAs(text: string | undefined): string | undefined {
  const amount = text === undefined ? undefined : parseAmount(text);
  if (!amount) return plain(text);
  return [amount.value.toFraction(), amount.kind === 'count' ? amount.noun : 'mm'].join(' ');
}

function supplyLine(wants: readonly Want[]): ShoppingLine {
  const [first] = wants;
  if (!first) throw new Error('a line that nobody wants');
  const { supply, unit, isKept, each } = first;
  const line = {
    unit,
    item: supply.item.value,
    from: supply.from?.value,
    kind: supply.kind.value,
    consumed: !isKept,
    share: supply.share?.value,
    packWritten: supply.pack?.value,
    onHandWritten: supply.onHand?.value,
  };
  const needed = isKept ? most(wants) : sum(wants);
  if (!needed) return { ...line, written: supply.each?.value, gaps: ['amount'] };
  const isOne = wants.every((want) => each && want.each?.value.equals(each.value));
  return { ...line, ...(each && isOne && { each }), ...reckon(needOf(supply, needed)) };
}

/** What goes round has to be enough for the party that wants the most of it. */
function most(wants: readonly Want[]): Amount | undefined {
  return needsOf(wants).toSorted((a, b) => b.value.compare(a.value))[0];
}

function sum(wants: readonly Want[]): Amount | undefined {
  const needs = needsOf(wants);
  const [first] = needs;
  const values = needs.map(({ value }) => value);
  return first && { ...first, value: values.reduce((all, each) => all.add(each)) };
}

function needsOf(wants: readonly Want[]): readonly Amount[] {
  return wants.flatMap(({ needed }) => needed ?? []);
}

function needOf({ pack, onHand, price }: Supply, needed: Amount): Need {
  const size = pack && parseAmount(pack.value);
  return {
    needed,
    onHand: onHand && onHandOf(onHand.value, size),
    pack: size,
    price: price?.value,
    priced: 'pack',
  };
}

/** `2 packs` are as much as is in them. */
function onHandOf(text: string, pack: Amount | undefined): Amount | undefined {
  const amount = parseAmount(text);
  const inPacks = amount?.kind === 'count' && amount.noun === 'pack' && pack;
  return inPacks ? { ...pack, value: pack.value.mul(amount.value) } : amount;
}
