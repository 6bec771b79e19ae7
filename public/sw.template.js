// Keeps one whole version of Penlight on the device.
//
// A version is stored completely or not at all, is never mixed with another one
// and is never fetched piece by piece. A new version waits until the app says
// that no examination is running. The build fills in the two constants.

const VERSION = "__VERSION__";
// Address relative to the scope -> digest of its content.
const FILES = __FILES__;

const SCOPE = new URL(self.registration.scope);
// Two Penlights under one host must not delete each other's files. A space ends
// the path, since no path contains one unescaped.
const PREFIX = `penlight ${SCOPE.pathname} `;
const CACHE = PREFIX + VERSION;
const ADDRESSES = new Set(Object.keys(FILES).map(address));

function address(name) {
  return new URL(name, SCOPE).href;
}

async function install() {
  try {
    const cache = await caches.open(CACHE);
    // Past the HTTP cache, and checked: a file of another release that arrives
    // in the middle of a deployment makes this attempt fail instead of the app.
    await cache.addAll(
      Object.entries(FILES).map(
        ([name, integrity]) => new Request(address(name), { cache: "reload", integrity }),
      ),
    );
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== CACHE) {
      await caches.delete(name);
    }
  }
  await self.clients.claim();
}

// The stored address that answers this request, if it is ours to answer.
function stored(request) {
  if (request.method !== "GET") {
    return null;
  }
  const url = new URL(request.url);
  const inScope = url.origin === SCOPE.origin && url.pathname.startsWith(SCOPE.pathname);
  // Deeper folders may belong to another app, and our relative links would not work there.
  if (request.mode === "navigate" && inScope && !url.pathname.slice(SCOPE.pathname.length).includes("/")) {
    return SCOPE.href;
  }
  return ADDRESSES.has(url.href) ? url.href : null;
}

async function answer(href, request) {
  const cache = await caches.open(CACHE);
  // The cached response itself: a copy would lose the compiled code kept with it.
  return (await cache.match(href, { ignoreVary: true })) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));

self.addEventListener("fetch", (event) => {
  const href = stored(event.request);
  if (href !== null) {
    event.respondWith(answer(href, event.request));
  }
});

self.addEventListener("message", (event) => {
  if (event.data?.type === "activate-update") {
    self.skipWaiting();
  }
});
