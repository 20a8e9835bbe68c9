// Finds projects in the list: by words, level, time, occasion and tag. What is looked for stands in the address after the
// `#`, which works from disk too. The search itself is loaded when it is first used. Without this script the whole list stands, and there is no search.
(() => {
  const form = document.querySelector('form.find');
  if (!form) return;
  const status = form.querySelector('[role="status"]');
  const reset = form.querySelector('button[type="reset"]');
  const fields = [...form.querySelectorAll('[name]')];
  const cards = [...document.querySelectorAll('.card')].map((element) => ({
    element,
    href: element.querySelector('h3 a').getAttribute('href'),
    level: element.dataset.level,
    minutes: Number(element.dataset.minutes || Number.POSITIVE_INFINITY),
    occasion: element.dataset.occasion,
    tags: element.dataset.tags.split('\n'),
    repeated: 'repeated' in element.dataset,
  }));
  /** How long nothing is typed before the count is read out, in milliseconds. */
  const PAUSE = 400;
  let pause;

  /** Without accents and capitals. */
  function plain(text) {
    return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  }

  let index;
  let isAsked = false;

  /** Everything is shown until the search is there, which is a moment at most. */
  function load() {
    if (isAsked) return;
    isAsked = true;
    const script = document.createElement('script');
    script.src = form.dataset.search;
    script.addEventListener('load', () => {
      const { MiniSearch, found } = globalThis.sheetwright;
      index = new MiniSearch({ fields: ['title', 'kind', 'text'], processTerm: plain });
      index.addAll(found);
      show();
    });
    document.head.append(script);
  }

  /** Letters at a word's end that may be an ending, and those of a word that may be mistyped. */
  const ENDING = 2;
  const STEM = 3;

  /** Addresses of what each word of a query is found in: whole, begun, without its ending, or else nearly so. */
  function hits(q) {
    if (!index) {
      load();
      return () => true;
    }
    const words = plain(q)
      .split(/[^\p{L}\p{N}]+/u)
      .filter(Boolean);
    const each = words.map(wordHits);
    return (href) => each.every((those) => those.has(href));
  }

  function wordHits(word) {
    const begun = hrefsOf(word, { prefix: true });
    const stems = [1, ENDING].map((letters) => word.slice(0, -letters)).filter((stem) => stem.length >= STEM);
    const ended = stems.flatMap((stem) => [...hrefsOf(stem, {})]);
    const exact = new Set([...begun, ...ended]);
    return exact.size > 0
      ? exact
      : hrefsOf(word, { fuzzy: word.length > 8 ? 2 : word.length > 4 ? 1 : false });
  }

  function hrefsOf(word, how) {
    return new Set(index.search(word, how).map(({ id }) => id));
  }

  function asked() {
    return Object.fromEntries(
      fields.map(({ name, value }) => [name, value.trim()]).filter(([, value]) => value),
    );
  }

  function fits(card, { level, time, occasion, tag }, isHit) {
    return (
      isHit(card.href) &&
      (!level || card.level === level) &&
      (!time || card.minutes <= Number(time)) &&
      (!occasion || card.occasion === occasion) &&
      (!tag || card.tags.includes(tag))
    );
  }

  /** The next session stands above the list already, and is shown in it only as something found. */
  function show() {
    const query = asked();
    const searching = Object.keys(query).length > 0;
    const isHit = query.q ? hits(query.q) : () => true;
    const found = cards.filter((card) => fits(card, query, isHit));
    for (const card of cards) card.element.hidden = searching ? !found.includes(card) : card.repeated;
    for (const section of document.querySelectorAll('.projects')) {
      section.hidden = !section.querySelector('.card:not([hidden])');
    }
    reset.hidden = !searching;
    clearTimeout(pause);
    pause = setTimeout(() => {
      const text = form.dataset.found.replace('{count}', found.length).replace('{all}', cards.length);
      status.textContent = !searching
        ? form.dataset.all
        : found.length === 0
          ? `${text}. ${form.dataset.none}`
          : text;
    }, PAUSE);
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
    show();
    return Object.keys(asked()).length > 0;
  }

  const changed = () => {
    show();
    keep();
  };
  form.addEventListener('focusin', load, { once: true });
  form.addEventListener('input', changed);
  form.addEventListener('change', changed);
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('reset', () => {
    for (const field of fields) field.value = '';
    changed();
    fields[0].focus();
  });
  addEventListener('hashchange', recall);
  form.hidden = false;
  if (recall()) form.scrollIntoView();
})();
