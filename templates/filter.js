// Finds projects in the list: by words, level, time, occasion and tag. What is looked for stands in the address after the
// `#`, which works from disk too. Without this script the whole list stands, and there is no search.
(() => {
  const form = document.querySelector('form.find');
  if (!form) return;
  const status = form.querySelector('[role="status"]');
  const reset = form.querySelector('button[type="reset"]');
  const fields = [...form.querySelectorAll('[name]')];
  const cards = [...document.querySelectorAll('.card')].map((element) => ({
    element,
    words: plain([element.textContent, element.dataset.occasion, element.dataset.tags].join(' ')),
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

  function asked() {
    return Object.fromEntries(
      fields.map(({ name, value }) => [name, value.trim()]).filter(([, value]) => value),
    );
  }

  function fits(card, { q = '', level, time, occasion, tag }) {
    return (
      plain(q)
        .split(/\s+/u)
        .every((word) => card.words.includes(word)) &&
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
    const found = cards.filter((card) => fits(card, query));
    for (const card of cards) card.element.hidden = searching ? !found.includes(card) : card.repeated;
    for (const section of document.querySelectorAll('.projects')) {
      section.hidden = !section.querySelector('.card:not([hidden])');
    }
    reset.hidden = !searching;
    clearTimeout(pause);
    pause = setTimeout(() => {
      const text = form.dataset.found.replace('{count}', found.length).replace('{all}', cards.length);
      status.textContent = searching ? text : form.dataset.all;
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
