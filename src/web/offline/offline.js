// The page's service worker, completed by scripts/offlineCopy.ts: keeps a copy of every file the page is made of
// and answers from it, so that the page runs without a network. It asks for nothing else.
const FILES = __FILES__;
const NAME = `quadwright-${__VERSION__}`;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(NAME)
      .then((cache) => cache.addAll(FILES))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith('quadwright-') && name !== NAME)
            .map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith(
    // The page itself is asked for anew while there is a network, so that a newer one is seen.
    event.request.mode === 'navigate'
      ? fetch(event.request).catch(() => caches.match('./', { ignoreSearch: true }))
      : caches.match(event.request).then((found) => found ?? fetch(event.request)),
  );
});
