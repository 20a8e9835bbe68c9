// What a sheet leads on to: the projects most like it, and its neighbors in the list. Without this script, or the file that
// tells of them, there are the ways into the list.
(() => {
  const place = document.querySelector('.more');
  const { more, card } = globalThis.sheetwright;
  if (!place || !more) return;
  if (more.alike.length + more.neighbors.length > 0) place.hidden = false;
  put('.alike', more.alike, ({ why }) => [['card-why', why]]);
  put('.neighbors', more.neighbors, ({ why, when }) => [['card-why', when ? `${why}: ${when}` : why]]);

  function put(selector, projects, over) {
    const list = place.querySelector(selector);
    list.append(...projects.map((project) => card(project, '../', { over: over(project) })));
    list.hidden = projects.length === 0;
  }
})();
