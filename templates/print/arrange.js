/**
 * Arranges a handout before it is printed: tries the nets before, between and after the blocks that may stand beside
 * them, at each density, in a row of columns as high as the pages, and keeps what fills the fewest pages best.
 */
(() => {
  const flow = document.querySelector('.flow');
  if (!flow) return;
  const root = document.documentElement;

  /** Nothing is to be under half full, nor the last page under a third. */
  const LEAST = { page: 0.5, last: 1 / 3 };
  /** What speaks against an arrangement, in pages. */
  const COST = { page: 10, sparse: 4, broken: 3, dense: 0.5, late: 0.05 };
  const DENSITIES = ['roomy', 'snug', 'airy'];

  /** Every way to set so many things into a row with so many gaps, each after the one before. */
  const places = (count, last, from = 0) => {
    if (count === 0) return [[]];
    const gaps = Array.from({ length: last - from + 1 }, (_, index) => from + index);
    return gaps.flatMap((gap) => places(count - 1, last, gap).map((rest) => [gap, ...rest]));
  };

  const blocks = [...flow.children];
  const first = blocks.findIndex((block) => block.matches('.steps-section'));
  const nets = blocks.filter((block) => block.matches('.net'));
  const before = blocks.slice(0, first).filter((block) => !nets.includes(block));
  const after = blocks.slice(first);
  const orders = places(nets.length, before.length)
    .slice(0, 24)
    .map((gaps) => [
      ...[...before, undefined].flatMap((block, index) => [
        ...nets.filter((_, net) => gaps[net] === index),
        ...(block ? [block] : []),
      ]),
      ...after,
    ]);

  const INK = 'h1, h2, h3, p, li, dt, dd, tr, img, svg, figcaption';

  /** How full each page is, as a part of its height: the mean of its two columns. */
  const fills = () => {
    const area = document.body.getBoundingClientRect();
    const step = area.width + Number.parseFloat(getComputedStyle(document.body).columnGap);
    const pages = [];
    for (const mark of document.body.querySelectorAll(INK)) {
      for (const { left, right, bottom, height } of mark.getClientRects()) {
        if (height === 0) continue;
        const page = Math.floor((left - area.left + 1) / step);
        const middle = area.left + page * step + area.width / 2;
        pages[page] ??= [0, 0];
        if (left < middle - 5) pages[page][0] = Math.max(pages[page][0], bottom - area.top);
        if (right > middle + 5) pages[page][1] = Math.max(pages[page][1], bottom - area.top);
      }
    }
    return Array.from(pages, (page) => (page ? (page[0] + page[1]) / 2 / area.height : 0));
  };

  /** Lists to cut and score by that run on to a second page, as they may in large type alone. */
  const broken = () =>
    [...document.querySelectorAll(':is(.letter, .a4) :is(section.cut, section.score)')].filter((list) => {
      const { left } = document.body.getBoundingClientRect();
      return [...list.getClientRects()].some((part) => part.left > left + 5);
    }).length;

  const costOf = (order, density) => {
    root.classList.remove('goes-on');
    const parts = broken();
    // Then page one says so, which takes room.
    root.classList.toggle('goes-on', parts > 0);
    const full = fills();
    const sparse = full.filter((each, page) => each < (page < full.length - 1 ? LEAST.page : LEAST.last));
    const blank = full.slice(0, -1).reduce((sum, each) => sum + (1 - each) ** 2, 0);
    const held = (full.length > 1 ? sparse.length : 0) * COST.sparse + parts * COST.broken;
    return full.length * COST.page + held + blank + (density > 0 ? COST.dense : 0) + order * COST.late;
  };

  root.classList.add('trial');
  let best = { cost: Number.POSITIVE_INFINITY, order: orders[0], density: DENSITIES[0] };
  for (const [density, name] of DENSITIES.entries()) {
    root.dataset.density = name;
    for (const [index, order] of orders.entries()) {
      flow.append(...order);
      const cost = costOf(index, density);
      if (cost < best.cost) best = { cost, order, density: name };
    }
  }
  flow.append(...best.order);
  root.dataset.density = best.density;
  costOf(0, 0);
  root.classList.remove('trial');
})();
