// A project as a card, where a page does not hold it: what a search finds elsewhere, and what a sheet leads on to.
(() => {
  const make = (name, className, ...children) => {
    const element = document.createElement(name);
    element.className = className;
    element.append(...children);
    return element;
  };

  /** @param root the way to the site's root: `''` or `../`. `lines` are `[class, text]`, above the title and under it. */
  function card({ slug, title, picture, accent }, root, { over = [], under = [] }) {
    const link = Object.assign(make('a', '', title), { href: `${root}${slug}/index.html` });
    const lines = (all) => all.filter(([, text]) => text).map(([name, text]) => make('p', name, text));
    const words = make('div', 'card-words', ...lines(over), make('h3', '', link), ...lines(under));
    const item = make('li', 'card', ...(picture ? [shown(`${root}${picture}`)] : []), words);
    item.style.setProperty('--accent', accent);
    return item;
  }

  function shown(src) {
    const image = Object.assign(make('img', ''), { loading: 'lazy', decoding: 'async', alt: '', src });
    return make('div', src.endsWith('.svg') ? 'shown drawn-picture' : 'shown', image);
  }

  globalThis.sheetwright = { ...globalThis.sheetwright, card };
})();
