// How is a page found without its server? Its one document is kept, replaced whole; no other page of the folder is.
const page = registration.scope;
const kept = "saltwright " + page;
addEventListener("install", (event) => {
  skipWaiting();
  event.waitUntil(caches.open(kept).then((all) => all.add(new Request(page, { cache: "reload" }))));
});
addEventListener("activate", (event) => event.waitUntil(clients.claim()));
addEventListener("fetch", (event) => {
  const { origin, pathname, search } = new URL(event.request.url);
  if (event.request.mode !== "navigate" || origin + pathname !== page) return;
  if (search === "?forget")
    return event.waitUntil(caches.delete(kept).then(() => registration.unregister()));
  const fresh = fetch(event.request).then(async (answer) => {
    if (answer.ok) await (await caches.open(kept)).put(page, answer.clone());
    return answer;
  });
  event.waitUntil(fresh.catch(() => {}));
  const late = new Promise((_, fail) => setTimeout(fail, 1500));
  event.respondWith(Promise.race([fresh, late]).catch(async () => (await caches.match(page)) ?? fresh));
});
