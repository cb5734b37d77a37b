import { execFile } from "node:child_process";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { LIBREOFFICE, pathOf } from "../../../programs.ts";

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
  const program = pathOf(LIBREOFFICE);
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
