/**
 * Arranges a handout before it is printed. It measures all that may not be torn apart, plans pages (`planPages`) for every
 * density, every place of the nets among the blocks before the steps, and steps of several pictures across both columns
 * or in one, and marks in the best plan where each page and column begins.
 */
(() => {
  const flow = document.querySelector('.flow');
  if (!flow) return;
  const root = document.documentElement;
  const columns = root.matches('.large-print') ? 1 : 2;

  /** In large type nothing but the gaps between paragraphs and steps may be smaller. */
  const DENSITIES = columns === 1 ? ['roomy', 'snug'] : ['roomy', 'close', 'snug', 'tight', 'airy', 'wide'];
  /** Measured before all others. */
  const FIRST = ['roomy', columns === 1 ? 'snug' : 'tight'];
  /** A picture that takes more of the width of a page in large type has no words beside it. */
  const BESIDE = 0.58;
  /** What speaks against an arrangement, in tenths of a page. */
  const PAGE = 10;
  const COST = {
    broken: 3,
    density: { roomy: 0, close: 0.3, snug: 0.5, tight: 1, airy: 0.4, wide: 0.8 },
    late: 0.05,
    spread: 0.1,
  };
  /** A plan so much dearer than the best is tried after it, before pages are planned a little lower. */
  const NEAR = 5;
  /** What it costs to begin a page or a column inside something. */
  const TORN = { picture: 14, frame: 1, step: { page: 0.5, column: 0.2 }, list: { page: 0.4, column: 0.2 } };

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
  const orders = places(nets.length, before.length)
    .slice(0, 24)
    .map((gaps) => [
      ...[...before, undefined].flatMap((block, index) => [
        ...nets.filter((_, net) => gaps[net] === index),
        ...(block ? [block] : []),
      ]),
      ...blocks.slice(first),
    ]);

  /** Steps of several pictures, and every way to set some of them across both columns; of many, all or none. */
  const wide = columns === 1 ? [] : [...flow.querySelectorAll('.step.spread')];
  const subsets = ([step, ...rest]) => (step ? subsets(rest).flatMap((set) => [[step, ...set], set]) : [[]]);
  const spreads = wide.length > 3 ? [wide, []] : subsets(wide);

  /** Rows of supplies that stay with their heading, the heading among them. */
  const ROWS = 4;

  const HEADING = 'h2, h3, h4, h5, h6, .step-head, .list-head';
  const WHOLE = `${HEADING}, .net, p, table, figure, .figures-beside, .tip, .caution, :is(li, dl > div):not(.step)`;
  const PICTURE = 'svg, img';

  const isWhole = (element) => {
    if (element.matches(WHOLE) || element.children.length === 0) return true;
    if (columns === 1) return false;
    return (
      element.matches('.cautions, .spread') ||
      (element.matches('.step:not(.long)') && element.querySelector(PICTURE))
    );
  };

  /** What is not to be torn apart, in its order. */
  const partsOf = (element) => {
    if (element.getClientRects().length === 0) return [];
    return isWhole(element) ? [element] : [...element.children].flatMap(partsOf);
  };

  /** The outermost element that begins with this one, up to a block of the flow: what is above it goes with it. */
  const outermost = (element) => {
    const { parentElement: parent } = element;
    return parent === flow || parent.firstElementChild !== element ? element : outermost(parent);
  };

  /** Whether a step shows a picture from one of its elements on: a page that begins there parts the two. */
  const hasPictureFrom = (step, element) =>
    [...step.querySelectorAll(PICTURE)].some(
      (picture) => element.compareDocumentPosition(picture) & Node.DOCUMENT_POSITION_FOLLOWING,
    );

  /** What it costs to begin a page, or a column, with an element. */
  const tornBy = (element) => {
    const step = element.closest('.step');
    if (element.parentElement === flow || step === element) return { atPage: 0, atColumn: 0 };
    if (element.closest('.cautions')) return { atPage: TORN.frame, atColumn: TORN.frame };
    const { page, column } = step ? TORN.step : TORN.list;
    return { atPage: step && hasPictureFrom(step, element) ? TORN.picture : page, atColumn: column };
  };

  const topOf = (element) =>
    element.getBoundingClientRect().top - Math.max(0, Number.parseFloat(getComputedStyle(element).marginTop));

  /** How far down the picture goes that an element may begin beside. */
  const pictureEndFor = (element) => {
    const pictures = element.closest('.beside')?.querySelector('.step-figures');
    return !pictures || element.contains(pictures) ? 0 : pictures.getBoundingClientRect().bottom;
  };

  /** The items of a block, as it is measured. */
  const itemsOf = (block) => {
    const parts = partsOf(block);
    const elements = parts.map(outermost);
    const tops = [...elements.map(topOf), block.getBoundingClientRect().bottom];
    // No list begins with fewer rows at the foot of a page, nor ends with one alone on the next.
    const isHeldRow = (index) => block.matches('.supplies') && (index < ROWS || index === parts.length - 2);
    const isBeside = (index) => tops[index] < Math.max(tops[index - 1], pictureEndFor(elements[index])) + 1;
    const isHeld = (index) => parts[index].matches(HEADING) || isHeldRow(index) || isBeside(index + 1);
    return parts.map((part, index) => ({
      element: elements[index],
      nth: index,
      under: block.matches('.supplies') ? tops[1] - tops[0] : 0,
      high: tops[index + 1] - tops[index],
      isWide: columns > 1 && part.matches('.wide, .spread'),
      held: index < parts.length - 1 && isHeld(index),
      ...tornBy(elements[index]),
    }));
  };

  /** Sets the words of a step beside its last pictures, as far as these are narrow and stand one below the other. */
  const besidePictures = (body) => {
    const figures = body.querySelector('.step-figures');
    body.prepend(figures);
    const { width: most } = document.body.getBoundingClientRect();
    const drawn = [...figures.querySelectorAll('.drawn, img')];
    const boxes = drawn.map((each) => each.getBoundingClientRect());
    // Two that stand side by side take the width already.
    const isInTheWay = ({ top, width }, index) =>
      width >= most * BESIDE || (index > 0 && top < boxes[index - 1].bottom);
    const inTheWay = drawn[boxes.findLastIndex(isInTheWay)];
    const all = [...figures.children];
    const above = all.findIndex((figure) => figure.contains(inTheWay ?? null)) + 1;
    if (above === all.length) return;
    const [narrow, beside] = [document.createElement('div'), document.createElement('div')];
    narrow.className = 'step-figures';
    narrow.append(...all.slice(above));
    beside.className = 'beside';
    beside.append(narrow, body.querySelector('.prose'));
    body.append(beside);
    if (above === 0) figures.remove();
  };

  /** Runs while the root has a class. To be turned on and off takes longer than what is measured. */
  const within = (name, run) => {
    root.classList.add(name);
    const value = run();
    root.classList.remove(name);
    return value;
  };

  /** Lists to cut and score by that run on to a second page, as they may in large type alone. */
  const broken = () =>
    [...document.querySelectorAll('section.cut, section.score')].filter((list) => {
      const { left } = document.body.getBoundingClientRect();
      return [...list.getClientRects()].some((part) => part.left > left + 5);
    }).length;

  /** Finds the page that something begins on, from 0, and how far down. */
  const placer = () => {
    const area = document.body.getBoundingClientRect();
    const step = area.width + Number.parseFloat(getComputedStyle(document.body).columnGap);
    return (element) => {
      const { left, top } = element.getClientRects()[0];
      return { page: Math.floor((left - area.left + 1) / step), down: top - area.top };
    };
  };

  /** What is above the flow, as a part of its last page, and how many it has begun before. */
  const headOf = () => {
    root.classList.remove('goes-on');
    const parts = broken();
    // Then page one says so, which takes room.
    root.classList.toggle('goes-on', parts > 0);
    return { ...placer()(flow), parts, goesOn: parts > 0 };
  };

  const placeSpreads = (spread) => {
    for (const step of wide) step.classList.toggle('spread', spread.includes(step));
  };

  /** All that is measured of a density, however high a page is: the head, and the items by their blocks for each spread. */
  const measure = (density) =>
    within('measured', () => {
      root.dataset.density = density;
      const head = headOf();
      const items = spreads.map((spread) => {
        placeSpreads(spread);
        return new Map(blocks.map((block) => [block, itemsOf(block)]));
      });
      return { density, head, items };
    });

  /** The cheapest plan of a density. */
  const planOf = ({ density, head, items }, height) => {
    const plans = spreads.flatMap((spread, index) =>
      orders.map((order, place) => {
        const own = order.flatMap((block) => items[index].get(block));
        const plan = planPages(own, { height, head: head.down, columns });
        const taste = COST.density[density] + place * COST.late + spread.length * COST.spread;
        const cost = plan.cost + head.page * PAGE + (columns > 1 ? head.parts * COST.broken : 0) + taste;
        return { ...plan, cost, items: own, order, spread, density, head };
      }),
    );
    return plans.reduce((best, plan) => (plan.cost < best.cost ? plan : best));
  };

  /** An empty row across all columns, at which a page can begin. */
  const pauseBefore = (element) => {
    const pause = document.createElement(element.matches('li') ? 'li' : 'div');
    pause.className = 'pause';
    element.before(pause);
  };

  const beginPage = ({ element, isWide }) => {
    if (columns === 1 || isWide) element.dataset.begins = 'page';
    else pauseBefore(element);
  };

  const beginColumn = ({ element }, down) => {
    element.dataset.begins = 'column';
    if (down > 0) element.style.paddingBlockStart = `${down}px`;
  };

  const clear = () => {
    for (const element of flow.querySelectorAll('[data-begins]')) {
      delete element.dataset.begins;
      element.style.removeProperty('padding-block-start');
    }
    for (const pause of flow.querySelectorAll('.pause')) pause.remove();
  };

  /** Sets the blocks in an order. Those that stand in it already are left alone, or they would all be laid out anew. */
  const setOrder = (order) => {
    if (order.some((block, index) => flow.children[index] !== block)) flow.append(...order);
  };

  const apply = ({ pages, items, order, spread, density, head }) => {
    setOrder(order);
    placeSpreads(spread);
    root.dataset.density = density;
    root.classList.toggle('goes-on', head.goesOn);
    for (const [index, { from, bands }] of pages.entries()) {
      if (index > 0) beginPage(items[from]);
      for (const { to, split, down } of bands) if (split < to) beginColumn(items[split], down);
    }
  };

  /** Whether every page begins where the plan says. */
  const isAsPlanned = ({ pages, items, head }) => {
    const placeOf = placer();
    return pages.every(({ from, to }, index) =>
      items.slice(from, to).every(({ element }) => placeOf(element).page === head.page + index),
    );
  };

  root.classList.add('trial');
  root.dataset.density = FIRST[0];
  const area = within('measured', () => {
    // In large type a step is often longer than a page: its pictures follow its heading, and the words may go on, beside
    // narrow pictures too.
    const long = columns === 1 ? flow.querySelectorAll('.step-body.with-figures') : [];
    for (const body of long) besidePictures(body);
    return document.body.getBoundingClientRect();
  });

  const tries = (plan) => {
    clear();
    apply(plan);
    return isAsPlanned(plan);
  };

  const measured = new Map(FIRST.map((density) => [density, measure(density)]));

  const plans = new Map();
  const planFor = (density, height) => {
    if (!measured.has(density)) {
      clear();
      setOrder(blocks);
      measured.set(density, measure(density));
    }
    const name = `${density} ${height}`;
    if (!plans.has(name)) plans.set(name, planOf(measured.get(density), height));
    return plans.get(name);
  };

  /** Nothing takes fewer pages than the tightest. */
  const { pages, head } = planFor(FIRST.at(-1), area.height);
  const least = (pages.length + head.page) * PAGE;

  /**
   * Applies the cheapest plan of which every page begins where it says, if there is one that is not far dearer than the
   * cheapest. To lay everything out once more is what takes the time: a density is measured once the least it may cost is
   * less than what all others do.
   */
  const applyBest = (height) => {
    const waiting = DENSITIES.map((density) =>
      measured.has(density) ? planFor(density, height) : { density, cost: least + COST.density[density] },
    );
    let most = Number.POSITIVE_INFINITY;
    while (waiting.length > 0) {
      const next = waiting.reduce((best, plan) => (plan.cost < best.cost ? plan : best));
      const { density, cost } = next;
      if (cost >= most) return false;
      if (next.pages) {
        waiting.splice(waiting.indexOf(next), 1);
        most = Math.min(most, cost + NEAR);
        if (tries(next)) return true;
      } else {
        waiting[waiting.indexOf(next)] = planFor(density, height);
      }
    }
    return false;
  };

  [0, 4, 10, 20].some((spare) => applyBest(area.height - spare));
  root.classList.remove('trial');
})();
