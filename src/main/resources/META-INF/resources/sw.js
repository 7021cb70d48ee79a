// Keeps on the device what a keeper needs at the rack without reception: the entry of a litter, the list of litters, and the
// files that these pages are made of. Whatever else is asked for goes to the server. Drafts are no matter of this file: unsent.js.
const FILES = 'demebook-files';
const PAGES = 'demebook-pages';
const KEPT_AT = 'Demebook-Kept-At';
const KEPT_FOR = 'Demebook-Kept-For';
const KEPT = /^\/populations\/[^/]+\/litters(\/new|\/offline)?$/;
const PATIENCE = 4000; // of somebody who holds a newborn snake
const FRESH = 5 * 60 * 1000;
const MOST_FILES = 80;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

self.addEventListener('message', event => {
  const { keeper, keep, forget } = event.data;
  event.waitUntil(forget ? caches.delete(PAGES) : keepFor(keeper, keep));
});

async function keepFor(keeper, paths) {
  await dropOthers(keeper);
  const pages = await caches.open(PAGES);
  for (const path of paths) {
    const kept = await pages.match(path, { ignoreVary: true });
    if (kept && Date.now() - Number(kept.headers.get(KEPT_AT)) < FRESH) continue;
    try {
      const response = await fetch(path, { credentials: 'same-origin', headers: { Accept: 'text/html' } });
      if (response.ok && !response.redirected) await store(path, response);
    } catch {
      return; // no reception: another time
    }
  }
}

// pages are one keeper's: another one on the same device finds nothing of theirs
async function dropOthers(keeper) {
  const pages = await caches.open(PAGES);
  for (const key of await pages.keys()) {
    const kept = await pages.match(key, { ignoreVary: true });
    if (kept?.headers.get(KEPT_FOR) !== keeper) await pages.delete(key, { ignoreVary: true });
  }
}

// with the moment at which it was kept, and for whom; the policy that came with it holds for the copy as well
async function store(path, response) {
  const text = await response.text();
  const keeper = /<meta name="keeper" content="([^"]+)"/.exec(text)?.[1];
  if (!keeper) return;
  await dropOthers(keeper);
  const headers = new Headers(response.headers);
  headers.delete('Content-Encoding');
  headers.delete('Content-Length');
  headers.set(KEPT_AT, Date.now());
  headers.set(KEPT_FOR, keeper);
  await (await caches.open(PAGES)).put(path, new Response(text, { headers }));
  const files = await caches.open(FILES);
  for (const [, file] of text.matchAll(/(?:src|href)="(\/(?:pages|webjars)\/[^"#]+)["#]/g)) {
    if (!(await files.match(file, { ignoreVary: true }))) await files.add(file).catch(() => {});
  }
  const keys = await files.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST_FILES)).map(key => files.delete(key)));
}

self.addEventListener('fetch', event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (/^\/(pages|webjars)\//.test(url.pathname)) {
    event.respondWith(file(request, url.search.startsWith('?v=') || url.pathname.startsWith('/webjars/')));
  } else if (request.mode === 'navigate') {
    event.respondWith(page(event, url));
  }
});

// an address with a version never changes what it means
async function file(request, lasting) {
  const files = await caches.open(FILES);
  const kept = await files.match(request, { ignoreVary: true });
  if (kept && lasting) return kept;
  try {
    const response = await fetch(request);
    if (response.ok) await files.put(request, response.clone());
    return response;
  } catch (failure) {
    if (kept) return kept;
    throw failure;
  }
}

async function page(event, url) {
  const keeping = KEPT.test(url.pathname);
  const network = fetch(event.request).then(response => {
    if (keeping && !url.search && response.ok && !response.redirected) {
      event.waitUntil(store(url.pathname, response.clone()).catch(() => {}));
    }
    return response;
  });
  const kept = async () => (await caches.open(PAGES)).match(url.pathname, { ignoreVary: true });
  try {
    if (!keeping) return await network;
    const slow = new Promise(resolve => setTimeout(resolve, PATIENCE));
    return (await Promise.race([network, slow])) ?? (await kept()) ?? (await network);
  } catch {
    return (await kept()) ?? (await insteadOf(url)) ?? Response.error();
  }
}

async function insteadOf(url) {
  const [, population] = /^\/populations\/([^/]+)/.exec(url.pathname) ?? [];
  const pages = await caches.open(PAGES);
  const paths = (await pages.keys()).map(key => new URL(key.url).pathname).filter(path => path.endsWith('/offline'));
  const path = paths.find(one => one.startsWith(`/populations/${population}/`)) ?? paths[0];
  return path && pages.match(path, { ignoreVary: true });
}
