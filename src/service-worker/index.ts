/**
 * Keeps the whole app on the device, so that every page opens without a network.
 * Everything the build made is stored when this worker is installed, and answered from the store from then on.
 */
/// <reference types="@sveltejs/kit" />
import { base, build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

const STORE = `roundsplit-${version}`;
const STORED = new Set([...build, ...files, ...prerendered]);

worker.addEventListener('install', (event) => {
  event.waitUntil(storeEverything());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropLeftovers());
});

worker.addEventListener('fetch', (event) => {
  const path = storedPath(event.request);
  if (path) event.respondWith(answer(path, event.request));
});

/** Pages are fetched anew: the browser's own cache may hold those of an older build. */
async function storeEverything(): Promise<void> {
  const store = await caches.open(STORE);
  await store.addAll(
    [...STORED].map((path) => new Request(path, { cache: build.includes(path) ? 'default' : 'reload' }))
  );
}

/** Removes the stores of other versions, and files that this build no longer has. */
async function dropLeftovers(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith('roundsplit-') && name !== STORE) await caches.delete(name);
  }
  const store = await caches.open(STORE);
  for (const request of await store.keys()) {
    if (!STORED.has(new URL(request.url).pathname)) await store.delete(request);
  }
}

/** The path under which the answer to a request is stored, if it is. */
function storedPath(request: Request): string | undefined {
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin) return undefined;
  if (STORED.has(url.pathname)) return url.pathname;
  if (request.mode !== 'navigate') return undefined;
  const page = url.pathname.replace(/(\.html|\/)$/, '') || `${base}/`;
  return STORED.has(page) ? page : undefined;
}

async function answer(path: string, request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  return (await store.match(path)) ?? fetch(request);
}
