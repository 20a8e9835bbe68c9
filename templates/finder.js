// Finds by words: whole ones, begun ones, without their endings, or else nearly so.
(() => {
  /** Letters at a word's end that may be an ending, and those of a word that may be mistyped. */
  const ENDING = 2;
  const STEM = 3;

  /** Without accents and capitals. */
  const plain = (text) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

  /** @returns for a query, whether a project is found by every word of it. */
  function finder(MiniSearch, projects) {
    const index = new MiniSearch({
      idField: 'slug',
      fields: ['title', 'summary', 'parts', 'tags', 'occasion', 'level'],
      processTerm: plain,
    });
    index.addAll(projects);
    const slugsOf = (word, how) => new Set(index.search(word, how).map(({ id }) => id));

    function hitsOf(word) {
      const begun = slugsOf(word, { prefix: true });
      const stems = [1, ENDING]
        .map((letters) => word.slice(0, -letters))
        .filter((stem) => stem.length >= STEM);
      const ended = stems.flatMap((stem) => [...slugsOf(stem, {})]);
      const exact = new Set([...begun, ...ended]);
      return exact.size > 0
        ? exact
        : slugsOf(word, { fuzzy: word.length > 8 ? 2 : word.length > 4 ? 1 : false });
    }

    return (query) => {
      const words = plain(query)
        .split(/[^\p{L}\p{N}]+/u)
        .filter(Boolean);
      const each = words.map(hitsOf);
      return (slug) => each.every((hits) => hits.has(slug));
    };
  }

  globalThis.sheetwright = { ...globalThis.sheetwright, finder };
})();
