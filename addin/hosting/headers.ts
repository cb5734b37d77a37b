/**
 * What a host sends beside each file: said once, for the server on this machine and for the header files in dist/.
 *
 * Excel on the web reads functions.json and scripts from a page of its own, and registers no function where that is refused
 * (OfficeDev/office-js issue 3970, Excel-Custom-Functions issue 212). The origins it does so from are many and change
 * (office-js-docs-pr issue 2956), and nothing here is secret: every origin may read. taskpane.html is shown in a frame, so
 * nothing forbids frames.
 */
import { extname } from "node:path";

/** A year, because another content has another name. */
const FOR_EVER = "public, max-age=31536000, immutable";

/** Scripts and style sheets whose name changes with their content. */
const HASHED = /-([A-Z0-9]{8}|[0-9a-f]{8})\.(js|css)$/;

const ALWAYS: readonly (readonly [name: string, value: string])[] = [
  ["access-control-allow-origin", "*"],
  ["x-content-type-options", "nosniff"],
];

const TYPES: ReadonlyMap<string, string> = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".mjs", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json; charset=utf-8"],
  [".xml", "text/xml; charset=utf-8"],
  [".png", "image/png"],
  [".svg", "image/svg+xml"],
  [".woff2", "font/woff2"],
]);

export function headersOf(file: string): Readonly<Record<string, string>> {
  return {
    ...Object.fromEntries(ALWAYS),
    "content-type": TYPES.get(extname(file)) ?? "application/octet-stream",
    "cache-control": isHashed(file) ? FOR_EVER : "no-cache",
  };
}

/**
 * The _headers file that Netlify and Cloudflare Pages read at the top of a site. Both join the values of all rules that match,
 * so what may be kept for ever is named in rules of its own and the rest is left to their "look again" of every file.
 */
export function headersFile(origin: string, files: readonly string[]): string {
  const folder = new URL(origin).pathname.replace(/\/$/, "");
  const rule = (path: string, headers: readonly (readonly [string, string])[]) =>
    [`${folder}/${path}`, ...headers.map(([name, value]) => `  ${name}: ${value}`)].join("\n");
  const kept = ["chunks/*", ...files.filter((file) => !file.includes("/") && isHashed(file))];
  return `${[rule("*", ALWAYS), ...kept.map((path) => rule(path, [["cache-control", FOR_EVER]]))].join("\n")}\n`;
}

/** The .htaccess file that Apache reads in each folder. A server without mod_headers refuses it aloud instead of sending less. */
export function htaccess(): string {
  const types = [...TYPES].map(([extension, type]) => `AddType "${type}" ${extension}`);
  const headers = [...ALWAYS, ["cache-control", "no-cache"] as const].map(([name, value]) => `Header always set ${name} "${value}"`);
  return `${[
    ...types,
    ...headers,
    "Header always unset x-frame-options",
    "Header unset x-frame-options",
    `<FilesMatch "${HASHED.source}">`,
    `  Header always set cache-control "${FOR_EVER}"`,
    "</FilesMatch>",
  ].join("\n")}\n`;
}

function isHashed(file: string): boolean {
  return HASHED.test(file);
}
