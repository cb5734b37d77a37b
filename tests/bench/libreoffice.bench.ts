/** Thirty years of hours through one garden: a Node process that computes the balance, and LibreOffice with the same balance as formulas. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parse } from "csv-parse/sync";
import { buildSync } from "esbuild";
import type { Garden } from "../../functions/basin/water-balance.ts";
import type { LongTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { COMPUTE_ALWAYS } from "../addin/actions/export/libreoffice.ts";
import { find, LIBREOFFICE } from "../programs.ts";
import { inventedHours } from "../functions/long-term/rain-series.ts";
import { FIRST_RESULT, writeBalanceWorkbook } from "./balance-workbook.ts";
import { atLeast, median, type BenchRow, type BenchSection } from "./measure.ts";
import { watchedProcess, type WatchedProcess } from "./watched-process.ts";

const ROUNDS = 3;

const garden: Garden = {
  contributingSquareFeet: 1000,
  runoffShare: 0.95,
  floorSquareFeet: 60,
  pondingInches: 6,
  designInchesPerHour: 0.3,
  mediaInches: 12,
  voidShare: 0.25,
  sideSlope: 3,
  evapotranspirationInchesPerDay: 0.1,
};

export const libreOffice: BenchSection = {
  title: "Thirty years of hours through one garden: a Node process, and LibreOffice with the same balance as formulas",
  async measure() {
    const program = find(LIBREOFFICE);
    if (program === null) return { rows: [], notes: [LIBREOFFICE.howToInstall] };
    const folder = mkdtempSync(join(tmpdir(), "soakbook-bench-"));
    try {
      const [whole, tiny] = [join(folder, "balance.xlsx"), join(folder, "tiny.xlsx")];
      await writeBalanceWorkbook(whole, inventedHours(30).inches, garden);
      await writeBalanceWorkbook(tiny, [0.5], garden);
      const [inNode, inLibreOffice] = [nodeProcess(folder), libreOfficeProcess(program, folder)];
      // The first start of a profile sets it up.
      await inLibreOffice(tiny);
      const rounds: Round[] = [];
      for (let round = 0; round < ROUNDS; round += 1) {
        rounds.push({
          nodeStart: await watchedProcess(process.execPath, ["--eval", "0"]),
          node: await inNode(),
          libreOfficeStart: await inLibreOffice(tiny),
          libreOffice: await inLibreOffice(whole),
        });
      }
      differ(JSON.parse(readFileSync(join(folder, ANSWER), "utf8")) as LongTermBalance, readFileSync(join(folder, "balance.csv"), "utf8"));
      return { rows: rowsOf(rounds) };
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

interface Round {
  /** With nothing to do. */
  readonly nodeStart: WatchedProcess;
  readonly node: WatchedProcess;
  /** With one hour of rain. */
  readonly libreOfficeStart: WatchedProcess;
  readonly libreOffice: WatchedProcess;
}

const ANSWER = "answer.json";

function nodeProcess(folder: string): () => Promise<WatchedProcess> {
  const [script, rain, site, answer] = ["balance.mjs", "rain.json", "garden.json", ANSWER].map((name) => join(folder, name)) as [
    string,
    string,
    string,
    string,
  ];
  buildSync({
    entryPoints: [fileURLToPath(new URL("balance-process.ts", import.meta.url))],
    bundle: true,
    format: "esm",
    platform: "node",
    outfile: script,
  });
  writeFileSync(rain, JSON.stringify(inventedHours(30).inches));
  writeFileSync(site, JSON.stringify(garden));
  return () => watchedProcess(process.execPath, [script, rain, site, answer]);
}

const AS_FULL_NUMBERS = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false";

/** Opens a workbook, computes it and writes its first sheet, the results. */
function libreOfficeProcess(program: string, folder: string): (workbook: string) => Promise<WatchedProcess> {
  const profile = join(folder, "profile");
  mkdirSync(join(profile, "user"), { recursive: true });
  writeFileSync(join(profile, "user", "registrymodifications.xcu"), COMPUTE_ALWAYS);
  const words = [
    "--headless",
    "--norestore",
    `-env:UserInstallation=${pathToFileURL(profile).href}`,
    "--convert-to",
    AS_FULL_NUMBERS,
    "--outdir",
    folder,
  ];
  return (workbook) => watchedProcess(program, [...words, workbook]);
}

/** The comparison is worth something only while both compute the same, to 9 digits. */
function differ(ours: LongTermBalance, csv: string): void {
  const theirs = (parse(csv, { relax_column_count: true }) as string[][]).slice(FIRST_RESULT);
  const mine = [
    ours.runoffCubicFeet,
    ours.directCubicFeet,
    ours.overflowCubicFeet,
    ours.storedCubicFeet,
    ours.overflows,
    ours.longestPondingHours,
  ];
  for (const [place, value] of mine.entries()) {
    const [name, shown] = theirs[place] ?? [];
    if (!(Math.abs(Number(shown) - value) <= 1e-9 * value))
      throw new Error(`LibreOffice and Soakbook differ in ${name}: ${shown} is not ${value}.`);
  }
}

function rowsOf(rounds: readonly Round[]): readonly BenchRow[] {
  const row = (name: string, unit: string, valueOf: (round: Round) => number, ratioOf?: (round: Round) => number): BenchRow => ({
    name,
    unit,
    value: median(rounds.map(valueOf)),
    ...(ratioOf === undefined ? {} : { ratio: median(rounds.map(ratioOf)) }),
  });
  const held = ({ megabytes }: WatchedProcess): number => megabytes ?? NaN;
  const over = (whole: number, start: number): number => whole - start;
  return [
    row("whole Node process: starts, reads the rain, balances it", "s", ({ node }) => node.seconds),
    atLeast(
      row(
        "whole LibreOffice process: starts, opens and computes 1.6 million formulas / Node",
        "s",
        ({ libreOffice: other }) => other.seconds,
        ({ libreOffice: other, node }) => other.seconds / node.seconds,
      ),
      300,
    ),
    row("over its start with nothing to do, Node", "s", ({ node, nodeStart }) => over(node.seconds, nodeStart.seconds)),
    row(
      "over its start with one hour of rain, LibreOffice / Node",
      "s",
      ({ libreOffice: other, libreOfficeStart }) => over(other.seconds, libreOfficeStart.seconds),
      ({ libreOffice: other, libreOfficeStart, node, nodeStart }) =>
        over(other.seconds, libreOfficeStart.seconds) / over(node.seconds, nodeStart.seconds),
    ),
    row("most memory of Node", "MB", ({ node }) => held(node)),
    atLeast(
      row(
        "most memory of LibreOffice / Node",
        "MB",
        ({ libreOffice: other }) => held(other),
        ({ libreOffice: other, node }) => held(other) / held(node),
      ),
      20,
    ),
    row("memory over its start with nothing to do, Node", "MB", ({ node, nodeStart }) => over(held(node), held(nodeStart))),
    row(
      "memory over its start with one hour of rain, LibreOffice / Node",
      "MB",
      ({ libreOffice: other, libreOfficeStart }) => over(held(other), held(libreOfficeStart)),
      ({ libreOffice: other, libreOfficeStart, node, nodeStart }) =>
        over(held(other), held(libreOfficeStart)) / over(held(node), held(nodeStart)),
    ),
  ];
}
