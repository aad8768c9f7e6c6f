// Keeps the pages for use without a network where a web server serves them; another rendering has another name and takes their place.
const NAME = "bb-__BB_NAME__", FILES = __BB_FILES__;
addEventListener("install", event => event.waitUntil(caches.open(NAME)
  .then(cache => cache.addAll(FILES.map(name => new Request(name, { cache: "no-cache" })))).then(() => skipWaiting())));
addEventListener("activate", event => event.waitUntil(caches.keys()
  .then(names => Promise.all(names.filter(name => name.startsWith("bb-") && name !== NAME).map(name => caches.delete(name))))
  .then(() => clients.claim())));
addEventListener("fetch", event => {
  if (event.request.method !== "GET" || new URL(event.request.url).origin !== location.origin) return;
  const asked = event.request.url.replace(/\/([?#].*)?$/, "/index.html"); // a folder is its index
  event.respondWith(caches.match(asked, { ignoreSearch: true }).then(kept => kept || fetch(event.request)));
});
