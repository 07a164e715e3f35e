/** The service worker: the handbook without a signal. The generator puts the build before it. */

import { Answers } from "./answers.mjs";
import { Store } from "./store.mjs";

/** @import {Build} from "./store.mjs" */

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const build = /** @type {{PENCILWOOD_BUILD: Build}} */ (/** @type {unknown} */ (self)).PENCILWOOD_BUILD;
const store = new Store(scope.registration.scope, build, {
  caches,
  fetch: (request, how) => fetch(request, how),
  subtle: crypto.subtle,
});
const ALL = "all";

/** All that was here before must be here again before the new build takes over. */
async function install() {
  const wanted = (await store.note(ALL)) ? Object.keys(build.files) : await store.everKept();
  await store.fetchMissing(new Set([...build.core, ...wanted]));
  await scope.skipWaiting();
}

async function activate() {
  await store.clearOld();
  await scope.clients.claim();
}

/** @param {string} [trouble] */
async function tell(trouble) {
  const here = await store.here();
  const files = Object.entries(build.files);
  const bytes = files.reduce((sum, [, [, one]]) => sum + one, 0);
  const held = files.reduce((sum, [path, [, one]]) => sum + (here.has(path) ? one : 0), 0);
  const state = {
    pencilwood: "kept",
    wanted: (await store.note(ALL)) !== undefined,
    all: here.size === files.length,
    bytes,
    held,
    download: build.download,
    trouble,
  };
  const open = await scope.clients.matchAll({ includeUncontrolled: true });
  for (const client of open) client.postMessage(state);
}

/** @type {Promise<void> | null} */
let keeping = null;
let stopped = false;

/** The reader has changed their mind while it was loading. */
class StoppedError extends Error {}

async function keepAll() {
  stopped = false;
  await store.writeNote(ALL, "yes");
  await tell();
  let told = 0;
  const now_and_then = () => {
    if (stopped) throw new StoppedError();
    if (Date.now() - told < 300) return;
    told = Date.now();
    void tell();
  };
  try {
    await store.fetchMissing(Object.keys(build.files), now_and_then);
    await tell();
  } catch (error) {
    if (error instanceof StoppedError) return;
    await tell(error instanceof DOMException && error.name === "QuotaExceededError" ? "full" : "broken");
  }
}

async function forget() {
  stopped = true;
  await keeping;
  await store.writeNote(ALL, null);
  const cache = await store.open();
  const core = new Set(build.core.map((path) => store.key(path, store.hashOf(path) ?? "")));
  for (const { url } of await cache.keys()) if (!core.has(url)) await cache.delete(url);
  await tell();
}

/** @param {string[]} addresses what the open page is made of */
async function keepThese(addresses) {
  const paths = addresses
    .filter((one) => one.startsWith(store.root))
    .map((one) => store.pathOf(new URL(one)) || "index.html")
    .map((path) => (path.endsWith("/") ? `${path}index.html` : path));
  await store.fetchMissing(new Set(paths.filter((path) => path in build.files)));
}

/** @param {{pencilwood: string, addresses: string[]}} asked */
async function listen(asked) {
  if (asked.pencilwood === "keep-all") await (keeping ??= keepAll().finally(() => (keeping = null)));
  else if (asked.pencilwood === "forget") await forget();
  else if (asked.pencilwood === "keep") await keepThese(asked.addresses).catch(() => undefined);
  else if (asked.pencilwood === "state") await tell();
}

scope.addEventListener("install", (event) => event.waitUntil(install()));
scope.addEventListener("activate", (event) => event.waitUntil(activate()));
scope.addEventListener("message", (event) => event.waitUntil(listen(event.data)));
scope.addEventListener("fetch", (event) => {
  const answer = new Answers(store, (work) => event.waitUntil(work.catch(() => undefined))).to(
    event.request,
  );
  if (answer !== null) event.respondWith(answer);
});
