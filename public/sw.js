// Keeps one whole build of Cartside on the device, so that it opens where there is no signal.
//
// The build list below is written by `cargo xtask dist` and `cargo xtask serve`. Every file in it has
// its SHA-256, so that a half-updated host or a cut line can never leave two builds mixed. A packed file
// is kept unpacked, under the name and with the SHA-256 that `BUILD.unpacked` gives. What was kept is checked again
// whenever it is asked for, and fetched anew if it is lost or damaged.
// Messages it answers:
//   {type: "is-ready"} with a MessagePort: replies {type: "ready", ready, digest, files, missing};
//   {type: "take-over"}: a waiting worker becomes the active one.
"use strict";

const BUILD = null;

const SCOPE = new URL(self.registration.scope);
// Two copies of the app under one origin must not remove each other's files, so the path is in the name.
const CACHE_PREFIX = `cartside-${SCOPE.pathname}-`;
const CACHE = BUILD && CACHE_PREFIX + BUILD.digest;
const INDEX = "index.html";
// The SHA-256 of every file as it is kept, by its path.
const KEPT = BUILD ? keptFiles() : {};

if (BUILD) importScripts(addressOf(BUILD.unpacker));
const HANDED = BUILD && handedName(SCOPE.pathname);

self.addEventListener("install", (event) => event.waitUntil(keepWholeBuild()));
self.addEventListener("activate", (event) => event.waitUntil(takeCharge()));
self.addEventListener("message", (event) => event.waitUntil(answer(event)));
self.addEventListener("fetch", (event) => {
  const path = keptPathFor(event.request);
  if (path !== null) event.respondWith(serve(path, event.request));
});

function keptFiles() {
  const kept = { ...BUILD.files };
  for (const [from, { path, sha256 }] of Object.entries(BUILD.unpacked)) {
    delete kept[from];
    kept[path] = sha256;
  }
  return kept;
}

async function keepWholeBuild() {
  if (!BUILD) throw new Error("this build has no list of files; make it with `cargo xtask dist`");
  // All bytes are here and checked before the first is stored.
  const files = await Promise.all(Object.keys(BUILD.files).map(fetchChecked)).finally(() => caches.delete(HANDED));
  try {
    const cache = await caches.open(CACHE);
    for (const [path, response] of files) await cache.put(addressOf(path), response);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function fetchChecked(path) {
  if (Object.hasOwn(BUILD.unpacked, path)) {
    const handed = await handedChecked(BUILD.unpacked[path]);
    if (handed) return handed;
  }
  const response = await fetch(addressOf(path), { cache: "reload", credentials: "same-origin" });
  if (!response.ok) throw new Error(`${path}: the host answered ${response.status}`);
  const bytes = await response.arrayBuffer();
  const digest = await sha256(bytes);
  if (digest !== BUILD.files[path]) throw new Error(`${path}: the host sent other bytes than were built`);
  if (Object.hasOwn(BUILD.unpacked, path)) return unpackChecked(path, bytes);
  // A fresh response, because a redirected one may not answer a navigation.
  const type = response.headers.get("content-type") || "application/octet-stream";
  return [path, new Response(bytes, { headers: { "content-type": type } })];
}

// What the page has unpacked already at its first start, if it is what was built.
async function handedChecked({ path, sha256: expected }) {
  if (!(await caches.has(HANDED))) return null;
  const cache = await caches.open(HANDED);
  const bytes = await (await cache.match(addressOf(path)))?.arrayBuffer();
  if (!bytes || (await sha256(bytes)) !== expected) return null;
  return [path, new Response(bytes, { headers: { "content-type": "application/wasm" } })];
}

async function unpackChecked(from, packed) {
  const { path, sha256: expected } = BUILD.unpacked[from];
  const [, unpacker] = await fetchChecked(UNPACKER);
  const bytes = await unpack(new Uint8Array(packed), await unpacker.arrayBuffer());
  if ((await sha256(bytes)) !== expected) throw new Error(`${from}: other bytes came out than were packed`);
  return [path, new Response(bytes, { headers: { "content-type": "application/wasm" } })];
}

async function takeCharge() {
  const names = await caches.keys();
  await Promise.all(names.filter(isOldCache).map((name) => caches.delete(name)));
  await self.clients.claim();
}

function isOldCache(name) {
  if (!name.startsWith(CACHE_PREFIX) || name === CACHE) return false;
  return /^[0-9a-f]{64}$/.test(name.slice(CACHE_PREFIX.length));
}

async function answer(event) {
  const type = event.data && event.data.type;
  if (type === "take-over") await self.skipWaiting();
  if (type === "is-ready" && event.ports[0]) event.ports[0].postMessage(await readiness());
}

async function readiness() {
  const paths = Object.keys(KEPT);
  const whole = await Promise.all(paths.map(async (path) => (await isWhole(path)) || (await mended(path)) !== null));
  const missing = paths.filter((_, i) => !whole[i]);
  const ready = paths.length > 0 && missing.length === 0;
  return { type: "ready", ready, digest: BUILD && BUILD.digest, files: paths.length, missing };
}

async function isWhole(path) {
  const kept = await keptResponse(path);
  return kept !== undefined && (await sha256(await kept.arrayBuffer())) === KEPT[path];
}

// The listed file a request is for; the page itself for every other navigation; null to leave it to the network.
function keptPathFor(request) {
  const url = new URL(request.url);
  if (!BUILD || request.method !== "GET" || url.origin !== SCOPE.origin) return null;
  if (!url.pathname.startsWith(SCOPE.pathname)) return null;
  const path = decodeURIComponent(url.pathname.slice(SCOPE.pathname.length));
  if (Object.hasOwn(KEPT, path)) return path;
  return request.mode === "navigate" ? INDEX : null;
}

async function serve(path, request) {
  const asked = new URL(request.url).pathname;
  // The page finds its files beside its own address, so a deeper address is sent to the root; the browser keeps the part after #.
  if (path === INDEX && asked !== SCOPE.pathname && asked !== SCOPE.pathname + INDEX) {
    return Response.redirect(SCOPE.href, 302);
  }
  return ((await isWhole(path)) && (await keptResponse(path))) || (await mended(path)) || fetch(request);
}

// A kept file that is lost or damaged, fetched anew and kept; null while the host cannot be reached or has another build.
async function mended(path) {
  const packed = Object.keys(BUILD.unpacked).find((from) => BUILD.unpacked[from].path === path);
  try {
    const [, response] = await fetchChecked(packed ?? path);
    const cache = await caches.open(CACHE);
    await cache.put(addressOf(path), response.clone());
    return response;
  } catch {
    return null;
  }
}

async function keptResponse(path) {
  // Opening a cache makes it, and an evicted one must stay evicted to be noticed.
  if (!(await caches.has(CACHE))) return undefined;
  const cache = await caches.open(CACHE);
  return cache.match(addressOf(path), { ignoreVary: true });
}

function addressOf(path) {
  return new URL(path.split("/").map(encodeURIComponent).join("/"), SCOPE).href;
}

async function sha256(bytes) {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
