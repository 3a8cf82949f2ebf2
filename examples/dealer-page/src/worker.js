// Keeps the page's own files, so that it works where the shed has no signal.
const version = VERSION;
const files = FILES;

addEventListener("install", (event) => {
  event.waitUntil(caches.open(version).then((cache) => cache.addAll(files)).then(() => skipWaiting()));
});

addEventListener("activate", (event) => {
  const drop = (names) => Promise.all(names.filter((name) => name !== version).map((name) => caches.delete(name)));
  event.waitUntil(caches.keys().then(drop).then(() => clients.claim()));
});

addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  event.respondWith(caches.match(event.request, { ignoreSearch: true }).then((kept) => kept ?? fetch(event.request)));
});
