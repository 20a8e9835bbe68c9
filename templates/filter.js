// Finds projects in the list: by words, level, time, occasion, kind and year; and sorts them. What is looked for stands in the
// address after the `#`, which works from disk too. What there is to find is loaded when it is first asked for. Without this
// script the whole list stands, and there is no search.
(() => {
  const form = document.querySelector('form.find');
  if (!form) return;
  const status = form.querySelector('[role="status"]');
  const reset = form.querySelector('button[type="reset"]');
  const nothing = form.querySelector('.nothing');
  const narrow = form.querySelector('.narrow');
  const fields = [...form.querySelectorAll('[name]')];
  const results = document.querySelector('.results');
  const language = document.documentElement.lang;
  /** The lists as they stand when nothing is asked. */
  const home = [...document.querySelectorAll('.projects:not(.results)')].map((section) => ({
    section,
    isHidden: section.hidden,
    cards: [...section.querySelectorAll('.card')].map((element) => [element, element.hidden]),
  }));
  /** How long nothing is typed before the count is read out, in milliseconds. */
  const PAUSE = 400;
  let pause;
  let projects;
  let finder;
  let isAsked = false;

  /** Everything is shown until the search is there, which is a moment at most. */
  function load() {
    if (isAsked) return;
    isAsked = true;
    const script = document.createElement('script');
    script.src = form.dataset.search;
    script.addEventListener('load', () => {
      const { MiniSearch, found, finder: finderOf } = globalThis.sheetwright;
      projects = found.rows.map((row) =>
        Object.fromEntries(found.columns.map((column, place) => [column, row[place] || undefined])),
      );
      finder = finderOf(MiniSearch, projects);
      show();
    });
    script.addEventListener('error', () => {
      isAsked = false;
      status.textContent = form.dataset.failed;
    });
    document.head.append(script);
  }

  function asked() {
    return Object.fromEntries(
      fields.map(({ name, value }) => [name, value.trim()]).filter(([, value]) => value),
    );
  }

  const FITS = {
    q: () => true,
    sort: () => true,
    level: (project, level) => project.level === level,
    time: (project, time) => project.minutes <= Number(time),
    occasion: (project, occasion) => project.occasion === occasion,
    tag: (project, tag) => project.tags.includes(tag),
    year: (project, year) => project.session?.startsWith(year) ?? false,
  };

  function find(query) {
    const isHit = query.q ? finder(query.q) : () => true;
    const asks = Object.entries(query);
    return projects.filter(
      (project) => isHit(project.slug) && asks.every(([name, value]) => FITS[name](project, value)),
    );
  }

  const byText = (a = '', b = '') => (a < b ? -1 : Number(a > b));
  const byTitle = (a, b) => a.title.localeCompare(b.title, language);
  const { today } = globalThis.sheetwright;
  /** To come, the next one first; then what was, the latest first; then what has no day. */
  const ORDERS = {
    latest: (a, b) => byText(b.session, a.session) || byTitle(a, b),
    title: byTitle,
    time: (a, b) => (a.minutes ?? Infinity) - (b.minutes ?? Infinity) || byTitle(a, b),
    usual: (a, b) =>
      part(a) - part(b) ||
      (part(a) === 0 ? byText(a.session, b.session) : byText(b.session, a.session)) ||
      byTitle(a, b),
  };

  function part({ session }) {
    if (!session) return 2;
    return session >= today ? 0 : 1;
  }

  function show() {
    const query = asked();
    const isAsking = Object.keys(query).length > 0;
    reset.hidden = !isAsking;
    if (!isAsking) {
      putBack();
      return;
    }
    if (!finder) {
      load();
      return;
    }
    const found = find(query).sort(ORDERS[query.sort] ?? ORDERS.usual);
    for (const { section } of home) section.hidden = true;
    results.querySelector('.cards').replaceChildren(...found.map(cardOf));
    results.hidden = found.length === 0;
    help(query, found);
    tell(
      form.dataset.found.replace('{count}', found.length).replace('{all}', projects.length) +
        (found.length === 0 ? `. ${form.dataset.none}` : ''),
    );
  }

  function putBack() {
    tell(form.dataset.all);
    if (results.hidden && nothing.hidden) return;
    for (const { section, isHidden, cards } of home) {
      section.hidden = isHidden;
      section.querySelector('.cards').append(...cards.map(([card]) => card));
      for (const [card, wasHidden] of cards) card.hidden = wasHidden;
    }
    results.hidden = true;
    nothing.hidden = true;
  }

  function tell(text) {
    clearTimeout(pause);
    pause = setTimeout(() => {
      status.textContent = text;
    }, PAUSE);
  }

  const drawn = new Map(
    home.flatMap(({ cards }) =>
      cards.map(([card]) => [card.querySelector('h3 a').getAttribute('href').split('/')[0], card]),
    ),
  );

  /** The page's own card, or one made now of a project that stands on another page. */
  function cardOf(project) {
    const card = drawn.get(project.slug) ?? newCard(project);
    drawn.set(project.slug, card);
    card.hidden = false;
    return card;
  }

  function newCard(project) {
    const { session, summary, duration, level } = project;
    const day = new Intl.DateTimeFormat(language, { dateStyle: 'full', timeZone: 'UTC' });
    const facts = [duration, level].filter(Boolean).join(' · ');
    return globalThis.sheetwright.card(project, '', {
      over: [['card-when', session && day.format(new Date(session))]],
      under: [
        ['card-summary', summary],
        ['card-facts', facts],
      ],
    });
  }

  /** Where nothing fits: what there would be without one of the things that were asked. */
  function help(query, found) {
    nothing.hidden = true;
    if (found.length > 0) return;
    const ways = Object.keys(query)
      .map((name) => ({ name, count: find(without(query, name)).length }))
      .filter(({ count }) => count > 0 && count < projects.length);
    nothing.replaceChildren(...ways.map(wayOut));
    nothing.hidden = ways.length === 0;
  }

  const without = (query, name) =>
    Object.fromEntries(Object.entries(query).filter(([other]) => other !== name));

  function wayOut({ name, count }) {
    const field = fields.find((each) => each.name === name);
    const words = name === 'q' ? form.dataset.words : field.options[0].textContent;
    const button = Object.assign(document.createElement('button'), {
      type: 'button',
      className: 'button',
      textContent: `${words} (${count})`,
    });
    button.addEventListener('click', () => {
      field.value = '';
      changed();
      field.focus();
    });
    const item = document.createElement('li');
    item.append(button);
    return item;
  }

  /** Puts what is looked for in the address, so that it can be passed on and is there again after going back. */
  function keep() {
    const hash = new URLSearchParams(asked()).toString();
    history.replaceState(null, '', hash ? `#${hash}` : location.href.split('#')[0]);
  }

  function recall() {
    const query = new URLSearchParams(location.hash.slice(1));
    for (const field of fields) {
      field.value = query.get(field.name) ?? '';
      if (field.selectedIndex === -1) field.value = '';
    }
    const isNarrowed = Object.keys(asked()).some((name) => name !== 'q');
    if (isNarrowed) narrow.open = true;
    show();
    return Object.keys(asked()).length > 0;
  }

  function changed() {
    show();
    keep();
  }

  /** Where there is room, everything to choose from is at hand. */
  const wide = matchMedia('(width >= 44rem)');
  const unfold = () => {
    narrow.open = wide.matches || narrow.open;
  };
  wide.addEventListener('change', unfold);
  unfold();
  form.addEventListener('focusin', load, { once: true });
  form.addEventListener('input', changed);
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('reset', () => {
    for (const field of fields) field.value = '';
    changed();
    fields[0].focus();
  });
  addEventListener('hashchange', recall);
  form.hidden = false;
  if (recall() || location.hash === '#find') form.scrollIntoView();
})();
