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
  const key = await keyOf(request, cache);
  try {
    const fresh = await fetch(request);
    // A kept page is kept as it is now.
    if (fresh.ok && key) await cache.put(key, fresh.clone());
    return fresh;
  } catch (error) {
    const kept = key && (await cache.match(key));
    if (kept) return kept;
    throw error;
  }
}

// What is kept of it, if anything. A page has two addresses, with `index.html` and without, and is kept by one of them.
async function keyOf({ url }, cache) {
  const own = url.split(/[?#]/u)[0];
  const other = own.endsWith('/') ? `${own}index.html` : own.replace(/\/index\.html$/u, '/');
  const keys = await Promise.all([own, other].map((each) => cache.keys(each, { ignoreSearch: true })));
  return keys.flat()[0];
}
