import { execFile, spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

/** Where LibreOffice usually is; LIBREOFFICE names another. */
const USUAL_PLACES = [
  "/usr/bin/soffice",
  "/usr/local/bin/soffice",
  "/snap/bin/libreoffice",
  "/Applications/LibreOffice.app/Contents/MacOS/soffice",
  "C:\\Program Files\\LibreOffice\\program\\soffice.exe",
];

export function findLibreOffice(): string | null {
  const named = process.env["LIBREOFFICE"];
  if (named !== undefined && named !== "") return existsSync(named) ? named : null;
  return USUAL_PLACES.find((path) => existsSync(path)) ?? null;
}

export const HOW_TO_INSTALL =
  "The tests of exported files need LibreOffice: install it (Debian and Ubuntu: apt-get install libreoffice-calc-nogui; macOS: brew install --cask libreoffice; Windows: from its own page), or set LIBREOFFICE to the path of soffice.";

/** Installs Debian's LibreOffice Calc without its windows where this may be done; otherwise the caller says what to install. */
export function installLibreOffice(): boolean {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  const apt = (...words: string[]) =>
    spawnSync("apt-get", words, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } }).status === 0;
  return apt("update", "-qq") && apt("install", "-y", "-qq", "--no-install-recommends", "libreoffice-calc-nogui");
}

const LONGEST_CONVERSION_MILLISECONDS = 100_000;

// As it comes, it trusts the answers kept in a file: here it computes them all again.
export const COMPUTE_ALWAYS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** Commas, UTF-8, and every cell that looks like a formula taken for one: the most dangerous way to open such a file. */
export const CSV_WITH_FORMULAS = "CSV:44,34,76,1,,0,false,true,false,false,false,-1,true";

/** Opens each file in LibreOffice, which computes it, and saves it as a spreadsheet file again. */
export async function throughLibreOffice(
  files: Readonly<Record<string, Uint8Array | string>>,
  opening?: string,
): Promise<readonly Buffer[]> {
  const program = findLibreOffice();
  if (program === null) throw new Error(HOW_TO_INSTALL);
  const folder = await mkdtemp(join(tmpdir(), "soakbook-export-"));
  try {
    const [profile, out] = [join(folder, "profile"), join(folder, "out")];
    await mkdir(join(profile, "user"), { recursive: true });
    await writeFile(join(profile, "user", "registrymodifications.xcu"), COMPUTE_ALWAYS);
    const paths = await Promise.all(
      Object.entries(files).map(async ([name, content]) => {
        const path = join(folder, name);
        await writeFile(path, content);
        return path;
      }),
    );
    const words = [
      "--headless",
      "--norestore",
      `-env:UserInstallation=${pathToFileURL(profile).href}`,
      ...(opening === undefined ? [] : [`--infilter=${opening}`]),
      "--convert-to",
      "xlsx",
      "--outdir",
      out,
      ...paths,
    ];
    await promisify(execFile)(program, words, { timeout: LONGEST_CONVERSION_MILLISECONDS });
    return await Promise.all(paths.map((path) => readFile(join(out, basename(path).replace(/\.\w+$/, ".xlsx")))));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
