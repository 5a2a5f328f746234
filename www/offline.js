// How is the page found again without its server? One document is kept, and replaced whole.
const kept = "saltwright";
const page = new URL("./", location).href;
const forget = () => caches.delete(kept).then(() => registration.unregister());
const within = (promise, time) =>
  Promise.race([promise, new Promise((_, late) => setTimeout(late, time))]);
addEventListener("install", (event) => {
  skipWaiting();
  event.waitUntil(caches.open(kept).then((cache) => cache.add(new Request(page, { cache: "reload" }))));
});
addEventListener("activate", (event) => event.waitUntil(clients.claim()));
addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.mode !== "navigate") return;
  if (new URL(request.url).search === "?forget") return event.waitUntil(forget());
  const fresh = fetch(request).then(async (answer) => {
    if (answer.ok) await (await caches.open(kept)).put(page, answer.clone());
    return answer;
  });
  event.waitUntil(fresh.catch(() => {}));
  const old = () => caches.match(page).then((answer) => answer ?? fresh);
  event.respondWith(within(fresh, 1500).catch(old));
});
