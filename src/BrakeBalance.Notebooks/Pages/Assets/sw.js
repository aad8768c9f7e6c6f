// Keeps the pages for use without a network where a web server serves them; another rendering has another name and takes their place.
const NAME = "bb-__BB_NAME__", FILES = __BB_FILES__;
addEventListener("install", event => event.waitUntil(caches.open(NAME).then(cache => cache.addAll(FILES)).then(() => skipWaiting())));
addEventListener("activate", event => event.waitUntil(caches.keys()
  .then(names => Promise.all(names.filter(name => name.startsWith("bb-") && name !== NAME).map(name => caches.delete(name))))
  .then(() => clients.claim())));
addEventListener("fetch", event => {
  if (event.request.method !== "GET" || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(caches.match(event.request, { ignoreSearch: true }).then(kept => kept || fetch(event.request)));
});
