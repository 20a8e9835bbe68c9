// Keeps a page for a room without a network: its words, look, drawings and the pictures of the size in use. Offered where
// a browser lets a site do so, which is over HTTPS; never from disk.
(() => {
  const button = document.querySelector('.keep');
  if (!button || !isSecureContext || location.protocol === 'file:' || !navigator.serviceWorker) return;
  const KEPT = 'sheetwright-1';
  const page = location.href.split(/[?#]/u)[0];
  button.parentElement.hidden = false;
  button.addEventListener('click', async () => {
    button.disabled = true;
    try {
      await navigator.serviceWorker.register(button.dataset.worker);
      await navigator.serviceWorker.ready;
      const cache = await caches.open(KEPT);
      await cache.addAll(partsOfPage());
      button.textContent = button.dataset.kept;
    } catch {
      button.disabled = false;
      button.textContent = button.dataset.failed;
    }
  });

  function partsOfPage() {
    const own = [...document.querySelectorAll('script[src], link[rel="stylesheet"], link[rel="icon"]')].map(
      ({ src, href }) => src ?? href,
    );
    const pictures = [...document.images].map(({ currentSrc, src }) => currentSrc || src);
    const fonts = performance
      .getEntriesByType('resource')
      .flatMap(({ name }) => (/\.woff2$/u.test(name) ? [name] : []));
    const parts = [page, ...own, ...pictures, ...fonts].filter(Boolean);
    return [...new Set(parts)].filter((part) => new URL(part).origin === location.origin);
  }
})();
