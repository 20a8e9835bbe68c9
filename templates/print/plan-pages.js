/**
 * Where pages and columns end, chosen for all of a document at once, as the lines of a paragraph are: every page has a
 * price by how it is filled and where it breaks off, and the cheapest way through them all is found.
 *
 * An item: how `high` it is, whether it `isWide` (across all columns), whether it is `held` to the next, and what it costs
 * to begin a page or a column with it (`atPage`, `atColumn`). What is held is nowhere the last. Where the heading of its list
 * stands in the first column, so many items before it (`nth`), it begins the second as far down (`under`) as the list does.
 *
 * @param head how much of the first page is taken, in the unit of `height`, a page's
 * @returns its `cost`, how many `faults` (pages too empty, items torn apart), and its `pages`: each `from` and `to` items, in
 *   `bands` between what is wide, with the item that begins the second column (`split`), and how far down (`down`)
 */
// biome-ignore lint/correctness/noUnusedVariables: arrange.js, which stands in the same script, plans with it
const planPages = (items, { height, head, columns }) => {
  /** Nothing is to be under half full, nor the last page under a third; a line's box is a little more than its ink. */
  const LEAST = { page: 0.53, last: 0.37 };
  const COST = { page: 10, sparse: 12, blank: 2, uneven: 0.5 };

  const tops = [0];
  for (const { high } of items) tops.push(tops.at(-1) + high);
  const highOf = (from, to) => tops[to] - tops[from];

  /** The first of what is held together before an item: it may be higher than a page. */
  const rowOf = (to) => {
    let from = to - 1;
    while (from > 0 && items[from - 1].held) from--;
    return from;
  };

  /** How far down a second column begins with an item. */
  const downAt = (split, from) => {
    const { nth = 0, under = 0 } = items[split];
    return split - nth >= from ? under : 0;
  };

  /** Items between two wide ones, in columns as even as may be. */
  const bandOf = (from, to, isLowered) => {
    const band = { from, to, split: to, down: 0, high: highOf(from, to), depth: highOf(from, to), cost: 0 };
    if (columns === 1) return band;
    band.depth /= 2;
    for (let split = from + 1; split < to; split++) {
      const down = isLowered ? downAt(split, from) : 0;
      const high = Math.max(highOf(from, split), down + highOf(split, to));
      const cost = items[split].atColumn;
      const isBetter = high + cost * height * 0.05 < band.high + band.cost * height * 0.05;
      if (!items[split - 1].held && isBetter) Object.assign(band, { split, down, high, cost });
    }
    return band;
  };

  const bandsOf = (from, to, isLowered) => {
    const bands = [];
    for (let item = from; item < to; ) {
      let end = item + 1;
      if (!items[item].isWide) while (end < to && !items[end].isWide) end++;
      bands.push(
        items[item].isWide
          ? { from: item, to: end, split: end, high: items[item].high, depth: items[item].high, cost: 0 }
          : bandOf(item, end, isLowered),
      );
      item = end;
    }
    return bands;
  };

  /** A page with some items below what is on it; undefined when it does not hold them. */
  const pageOf = (from, to, above) => {
    const inHigh = (bands) => bands.reduce((sum, band) => sum + band.high, above);
    const lowered = bandsOf(from, to, true);
    // Where there is no room for that, the second column begins at its top.
    const isUneven = inHigh(lowered) > height && lowered.some(({ down }) => down > 0);
    const bands = isUneven ? bandsOf(from, to, false) : lowered;
    const high = inHigh(bands);
    const isAlone = to === from || (from >= rowOf(to) && above === 0);
    if (high > height && !isAlone) return undefined;
    const last = bands.at(-1);
    const full = Math.min(1, (high - (last ? last.high - last.depth : 0)) / height);
    const least = to === items.length ? LEAST.last : LEAST.page;
    const faults = full < least ? 1 + least - full : 0;
    const blank = to === items.length ? 0 : COST.blank * (1 - full) ** 2;
    const torn = bands.reduce((sum, band) => sum + band.cost, isUneven ? COST.uneven : 0);
    const many = Math.ceil(high / height - 0.001);
    return { from, to, bands, full, faults, cost: COST.page * many + COST.sparse * faults + blank + torn };
  };

  const start = { cost: 0, faults: 0, pages: [] };
  const after = (before, page, begins) => ({
    cost: before.cost + page.cost + begins,
    faults: before.faults + page.faults + (begins >= COST.sparse ? 1 : 0),
    pages: [...before.pages, page],
  });
  const better = (one, other) => (other === undefined || one.cost < other.cost ? one : other);
  const best = [];
  if (head > 0) best[0] = after(start, pageOf(0, 0, head), 0);
  for (let to = 1; to <= items.length; to++) {
    if (to < items.length && items[to - 1].held) continue;
    for (let from = to - 1; from >= 0; from--) {
      // Nor does any that begins before hold so much.
      if (from < rowOf(to) && highOf(from, to) > height * columns) break;
      const before = best[from];
      // What is dearer already without this page is not looked at.
      const isOpen = before && !(before.cost + items[from].atPage >= best[to]?.cost);
      const page = isOpen && pageOf(from, to, 0);
      if (page) best[to] = better(after(before, page, items[from].atPage), best[to]);
      const first = from === 0 && pageOf(0, to, head);
      if (first) best[to] = better(after(start, first, 0), best[to]);
    }
  }
  const plan = best.at(-1);
  // What has but one page may be as empty as it is.
  return plan.pages.length === 1 ? { ...plan, cost: COST.page, faults: 0 } : plan;
};
