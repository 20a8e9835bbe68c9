// What is said of days, as it is on the day it is read: sessions move from those to come to those that were, the next one
// stands on top, and nobody is offered a day that is over. Without this script no session is called the next.
(() => {
  const now = new Date();
  const two = (figure) => String(figure).padStart(2, '0');
  const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  globalThis.sheetwright = { ...globalThis.sheetwright, today };
  /** As many of the schedule's days as the page shows at first. */
  const days = [...document.querySelectorAll('.dates [data-day]')];
  const shown = days.filter((day) => !day.hidden).length;

  for (const element of document.querySelectorAll('[data-until]')) {
    element.hidden = element.dataset.until < today;
  }

  const open = days.filter((day) => day.dataset.day >= today).slice(0, shown);
  for (const day of days) day.hidden = !open.includes(day);
  const section = document.querySelector('.dates');
  if (section) section.hidden = open.length === 0;

  const cards = [...document.querySelectorAll('.card[data-session]')];
  if (cards.length === 0) return;
  for (const heading of document.querySelectorAll('h2[data-later]')) {
    heading.textContent = heading.dataset.later;
  }
  // Stable: two of one day stay as they were.
  const byDay = cards.sort((a, b) =>
    a.dataset.session < b.dataset.session ? -1 : Number(a !== b && a.dataset.session > b.dataset.session),
  );
  const coming = byDay.filter((card) => card.dataset.session >= today);
  const over = byDay.filter((card) => card.dataset.session < today).reverse();
  put('to-come', coming);
  put('earlier', over);
  lead(coming[0]);

  /** Touches nothing where all is in its place. */
  function put(id, wanted) {
    const place = document.getElementById(id).closest('section');
    const list = place.querySelector('.cards');
    const isRight =
      list.children.length === wanted.length && wanted.every((card) => card.parentElement === list);
    if (!isRight) list.append(...wanted);
  }

  /** The next session stands above the lists, and is shown in its own only as something found. */
  function lead(card) {
    const next = document.querySelector('.next');
    for (const other of cards) {
      const isNext = other === card && next !== null;
      other.toggleAttribute('data-repeated', isNext);
      other.hidden = isNext;
    }
    for (const list of document.querySelectorAll('.projects')) {
      list.hidden = !list.querySelector('.card:not([hidden])');
    }
    if (!next) return;
    next.hidden = !card;
    const link = card?.querySelector('h3 a');
    if (!link || next.querySelector('h3 a').getAttribute('href') === link.getAttribute('href')) return;
    fill(next, card, link);
  }

  function fill(next, card, link) {
    const { when, where, calendar, session } = card.dataset;
    const set = (selector, text) => {
      next.querySelector(selector).textContent = text;
    };
    next.style.cssText = card.style.cssText;
    set('.when', when);
    set('.where', where ?? '');
    set('.next-summary', card.querySelector('.card-summary')?.textContent ?? '');
    set('h3 a', link.textContent);
    for (const leading of next.querySelectorAll('h3 a, .button.main')) leading.href = link.href;
    const toCalendar = next.querySelector('.to-calendar');
    toCalendar.href = calendar;
    toCalendar.parentElement.dataset.until = session;
    toCalendar.parentElement.hidden = false;
    copy('.shown', '.next-card', 'prepend');
    copy('.card-facts', '.next-words .buttons', 'before');
    copy('.papers', '.next-words', 'append');
    next.querySelector('.next-card').classList.toggle('with-picture', next.querySelector('.shown') !== null);
    for (const image of next.querySelectorAll('[sizes]')) image.sizes = next.dataset.sizes;

    function copy(part, place, way) {
      next.querySelector(part)?.remove();
      const copied = card.querySelector(part)?.cloneNode(true);
      if (copied) next.querySelector(place)[way](copied);
    }
  }
})();
