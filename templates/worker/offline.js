// Shows the pages that a reader keeps when there is no network. What there is of the site is always asked for first: a
// page that was corrected is never shown as it was. Nothing is kept but what the reader asked to keep.
const KEPT = 'sheetwright-1';

self.addEventListener('install', () => self.skipWaiting());

self.addEventListener('activate', (event) => {
  const isOld = (name) => name.startsWith('sheetwright-') && name !== KEPT;
  const cleared = caches
    .keys()
    .then((names) => Promise.all(names.filter(isOld).map((name) => caches.delete(name))));
  event.waitUntil(cleared.then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET') event.respondWith(answer(event.request));
});

async function answer(request) {
  const cache = await caches.open(KEPT);
  try {
    const fresh = await fetch(request);
    // A kept page is kept as it is now.
    if (fresh.ok && (await cache.match(request, { ignoreSearch: true })))
      await cache.put(request, fresh.clone());
    return fresh;
  } catch (error) {
    const kept = await cache.match(request, { ignoreSearch: true });
    if (kept) return kept;
    throw error;
  }
}
