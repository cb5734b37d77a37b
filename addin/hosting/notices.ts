/** The licences of the packages that are in what is hosted: which they are comes from the bundler, the texts from the packages. */
import { readFile, readdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import type { Metafile } from "esbuild";
import satisfies from "spdx-satisfies";
import { html, list, type Html } from "./html.ts";
import { plainPage } from "./plain-page.ts";

/** A package that is in a bundle. */
export interface PackageNotice {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Its licence and its further notices, as it carries them. */
  readonly text: string;
}

/** What lets a bundle be passed on as long as the notice goes with it. Another licence is read by a person before it stands here. */
export const ACCEPTED_LICENCES = ["MIT", "ISC", "0BSD", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0"] as const;

const PACKAGE_FOLDER = /^(.*node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)/;
const NOTICE_FILE = /^(licen[cs]e|copying|notice|third-?party)/i;

/** The folders of the packages of which anything at all is in the bundle, as the bundler names them from a folder. */
export function packagesIn({ outputs }: Metafile, workingDirectory: string): readonly string[] {
  const files = Object.values(outputs).flatMap(({ inputs }) =>
    Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : [])),
  );
  return [
    ...new Set(
      files.flatMap((file) => {
        const [, folder] = PACKAGE_FOLDER.exec(file) ?? [];
        return folder === undefined ? [] : [resolve(workingDirectory, folder)];
      }),
    ),
  ];
}

/** By name. Rejects in words where a package names no licence, or one that nobody has accepted. */
export async function noticesOf(folders: readonly string[]): Promise<readonly PackageNotice[]> {
  const notices = await Promise.all([...new Set(folders)].map(noticeOf));
  return notices.toSorted((one, other) => one.name.localeCompare(other.name, "en"));
}

async function noticeOf(folder: string): Promise<PackageNotice> {
  const said = JSON.parse(await readFile(join(folder, "package.json"), "utf8")) as Record<string, unknown>;
  const [name, version] = [String(said["name"]), String(said["version"])];
  const licence = said["license"];
  if (typeof licence !== "string" || !isAccepted(licence)) {
    const named = typeof licence === "string" ? `the licence "${licence}"` : "no licence";
    throw new Error(`${name} ${version} names ${named}, so it cannot ship. Leave it out of the bundle, or read its licence and accept it.`);
  }
  const files = (await readdir(folder)).filter((file) => NOTICE_FILE.test(file)).sort();
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")));
  return { name, version, licence, text: texts.length > 0 ? texts.map(tidy).join("\n\n") : await standardText(licence) };
}

function isAccepted(licence: string): boolean {
  try {
    return satisfies(licence, ACCEPTED_LICENCES);
  } catch {
    return false;
  }
}

/** Some packages name their licence and carry no text of it. */
async function standardText(licence: string): Promise<string> {
  const file = createRequire(import.meta.url).resolve(`spdx-license-list/licenses/${licence}.json`);
  return tidy((JSON.parse(await readFile(file, "utf8")) as { licenseText: string }).licenseText);
}

function tidy(text: string): string {
  return text.replace(/\r\n?/g, "\n").replace(/^\n+|\s+$/g, "");
}

/** Packages with one and the same text share it. */
export function noticesPage(notices: readonly PackageNotice[]): string {
  const texts = [...new Set(notices.map(({ text }) => text))];
  return plainPage(
    "Soakbook: licences",
    html`<main>
<h1>Soakbook: licences</h1>
<p>These pages and scripts hold parts of ${String(notices.length)} packages that others wrote and let everybody use. Their names, versions, licences and notices follow. On what terms Soakbook itself may be used, its owner says.</p>
${list(
  texts.map((text) =>
    sectionOf(
      text,
      notices.filter((one) => one.text === text),
    ),
  ),
)}
<p><a href="support.html">Support and terms</a></p>
</main>`,
  );
}

function sectionOf(text: string, notices: readonly PackageNotice[]): Html {
  return html`<section>
<ul>
${list(notices.map(({ name, version, licence }) => html`<li>${name} ${version}: ${licence}</li>`))}
</ul>
<pre>${text}</pre>
</section>`;
}
