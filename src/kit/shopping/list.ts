import type { Project, Supply, SupplyKind } from '../../project/model.ts';
import type { StockPlan } from '../plan.ts';
import { type Amount, countOf, parseAmount } from './amount.ts';
import { type Need, reckon, type ShoppingLine } from './line.ts';

/** How many people come, and how many kits are made. */
type Party = { readonly attendees: number; readonly kits: number };

/** What is kept after a session; one each where nothing else is said. */
const KEPT: readonly SupplyKind[] = ['tool', 'ink', 'stamp', 'die', 'punch'];

/** Paper first, then supplies in the order the project names them. */
export function shoppingList(
  project: Project,
  plans: readonly StockPlan[],
  party: Party,
): readonly ShoppingLine[] {
  return [...plans.flatMap(stockLines), ...project.supplies.map((supply) => supplyLine(supply, party))];
}

/** A line for each size of sheet that is cut. */
function stockLines({ stock, layouts }: StockPlan): readonly ShoppingLine[] {
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
      item: stock.name,
      from: stock.from?.value,
      kind: 'stock',
      sheet: size,
      consumed: true,
      ...reckon(need),
    };
  });
}

function supplyLine(supply: Supply, { attendees, kits }: Party): ShoppingLine {
  const { item, kind, share, each, pack, onHand } = supply;
  const isKept = each === undefined && (share !== undefined || KEPT.includes(kind.value));
  const line = {
    item: item.value,
    from: supply.from?.value,
    kind: kind.value,
    consumed: !isKept,
    share: share?.value,
    packWritten: pack?.value,
    onHandWritten: onHand?.value,
  };
  if (isKept) {
    const count = Math.ceil(attendees / (share?.value ?? 1));
    return { ...line, ...reckon(needOf(supply, countOf(count))) };
  }
  const amount = each && parseAmount(each.value);
  if (!amount) return { ...line, written: each?.value, gaps: ['amount'] };
  const needed = { ...amount, value: amount.value.mul(BigInt(kits)) };
  return { ...line, each: amount, ...reckon(needOf(supply, needed)) };
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
