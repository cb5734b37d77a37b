/**
 * Keeps the page without Excel at hand for when there is no connection. Built into dist/offline-worker.js.
 *
 * A new version waits until no page of the old one is open, so that no page ever gets parts of two versions. Online the
 * page itself always comes from its host; its parts bear the hash of their content in their names, so a kept one is
 * the same as a fetched one. Nothing else is ever answered from what is kept: Excel's page and the manifests are not.
 */
import type { OfflineFiles } from "./offline-files.ts";

declare const OFFLINE_FILES: OfflineFiles;

interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const PREFIX = "soakbook ";
const PATIENCE_MILLISECONDS = 5000;
const { version, page, parts } = OFFLINE_FILES;
const cacheName = `${PREFIX}${version}`;
const at = (file: string): string => new URL(file, location.href).href;
const kept: ReadonlySet<string> = new Set(parts.map(at));

addEventListener("install", (event) => {
  (event as Extendable).waitUntil(caches.open(cacheName).then((cache) => cache.addAll([at(page), ...kept])));
});

addEventListener("activate", (event) => {
  (event as Extendable).waitUntil(forgetOtherVersions());
});

addEventListener("fetch", (event) => {
  const { request } = event as Fetching;
  const address = request.url.replace(/[?#].*$/, "").replace(/\/index\.html$/, "/");
  if (request.method !== "GET") return;
  if (request.mode === "navigate" && address === at(page)) (event as Fetching).respondWith(fromHostOrKept(request));
  else if (kept.has(address)) (event as Fetching).respondWith(keptOrFromHost(request, address));
});

async function forgetOtherVersions(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== cacheName).map((name) => caches.delete(name)));
}

async function fromHostOrKept(request: Request): Promise<Response> {
  try {
    const answer = await fetch(request.url, { cache: "no-cache", signal: AbortSignal.timeout(PATIENCE_MILLISECONDS) });
    if (answer.ok) return answer;
  } catch {
    // No connection, or none to speak of.
  }
  return (await caches.match(at(page))) ?? Response.error();
}

async function keptOrFromHost(request: Request, address: string): Promise<Response> {
  return (await caches.match(address)) ?? fetch(request);
}
