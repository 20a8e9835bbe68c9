/**
 * Arranges a handout before it is printed: tries the nets before, between and after the blocks that may stand beside
 * them, steps of several pictures across both columns or in one, at each density, in a row of columns as high as the
 * pages, and keeps what fills the fewest pages best. Where none is right, it tries to begin a new page as well.
 */
(() => {
  const flow = document.querySelector('.flow');
  if (!flow) return;
  const root = document.documentElement;

  /** Nothing is to be under half full, nor the last page under a third; a line's box is a little more than its ink. */
  const LEAST = { page: 0.53, last: 0.37 };
  /** What speaks against an arrangement, in pages. */
  const COST = { page: 10, sparse: 4, broken: 3, parted: 8, dense: 0.5, late: 0.05 };
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

  /** Steps of several pictures, and every way to set some of them across both columns; of many, all or none. */
  const wide = [...flow.querySelectorAll('.step.spread')];
  const subsets = ([step, ...rest]) => (step ? subsets(rest).flatMap((set) => [[step, ...set], set]) : [[]]);
  const spreads = wide.length > 2 ? [wide, []] : subsets(wide);

  /** What a new page may begin with; as a rule nothing has to. */
  const pause = document.createElement('div');
  pause.className = 'pause';
  const starts = [...before.slice(1), after[0]].filter((block) => block !== undefined);

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

  const pageOf = (element) => {
    const area = document.body.getBoundingClientRect();
    const step = area.width + Number.parseFloat(getComputedStyle(document.body).columnGap);
    return Math.floor(((element.getClientRects()[0]?.left ?? 0) - area.left + 1) / step);
  };

  /** Steps with a picture on another page than their heading. */
  const parted = () =>
    [...flow.querySelectorAll('.step')].filter((step) => {
      const page = pageOf(step.querySelector('.step-head'));
      return [...step.querySelectorAll('svg, img')].some((picture) => pageOf(picture) !== page);
    }).length;

  const costOf = ({ order, density, spread, start }) => {
    const place = orders[order];
    flow.append(...place);
    pause.remove();
    if (start) start.before(pause);
    for (const step of wide) step.classList.toggle('spread', spread.includes(step));
    root.dataset.density = DENSITIES[density];
    root.classList.remove('goes-on');
    const parts = broken();
    // Then page one says so, which takes room.
    root.classList.toggle('goes-on', parts > 0);
    const full = fills();
    const sparse = full.filter((each, page) => each < (page < full.length - 1 ? LEAST.page : LEAST.last));
    const blank = full.slice(0, -1).reduce((sum, each) => sum + (1 - each) ** 2, 0);
    const faults =
      (full.length > 1 ? sparse.length : 0) * COST.sparse + parts * COST.broken + parted() * COST.parted;
    const taste = (density > 0 ? COST.dense : 0) + order * COST.late;
    return { faults, cost: full.length * COST.page + faults + blank + taste };
  };

  const best = { cost: Number.POSITIVE_INFINITY, faults: 1 };
  const tryAll = (start) => {
    for (const spread of spreads) {
      for (const density of DENSITIES.keys()) {
        for (const order of orders.keys()) {
          const way = { order, density, spread, start };
          const said = costOf(way);
          if (said.cost < best.cost) Object.assign(best, said, { way });
        }
      }
    }
  };

  root.classList.add('trial');
  tryAll(undefined);
  if (best.faults > 0) for (const start of starts) tryAll(start);
  costOf(best.way);
  root.classList.remove('trial');
})();
