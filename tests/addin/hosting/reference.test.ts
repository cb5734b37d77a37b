import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { helpPage } from "../../../addin/hosting/help-page.ts";
import { referenceEntries } from "../../../addin/hosting/reference.ts";
import { keptFiles } from "../../../addin/hosting/write-reference.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";

const entries = referenceEntries();
const byName = new Map(entries.map((entry) => [entry.name, entry]));

describe("The function reference", () => {
  it("has every function of the catalogue, in its order", () => {
    expect(entries.map(({ name }) => name)).toEqual(catalogue.map(({ name }) => name));
  });

  it.each(entries.map((entry) => [entry.name, entry] as const))(
    "tells of %s all that somebody needs who has only the page",
    (name, entry) => {
      const declared = catalogue.find((candidate) => candidate.name === name);
      expect(entry.equation.length).toBeGreaterThan(0);
      expect(entry.sources.length).toBeGreaterThan(0);
      expect(entry.inputs).toHaveLength(declared?.parameters.length ?? -1);
      expect(entry.cautions.length === 0).toBe(declared?.cautions.length === 0);
      const said = JSON.stringify(entry);
      expect(said).not.toMatch(/undefined|NaN|Infinity|\[object/);
      for (const caution of entry.cautions) expect(caution).toMatch(/^[A-Z].*\.$/);
    },
  );

  it("says how a function is written, with what may be left out in brackets", () => {
    expect(byName.get("RUNOFFDEPTH")?.usage).toBe("=SOAK.RUNOFFDEPTH(rain, curveNumber, [lossRatio], [units])");
  });

  it("gives the units of an argument in both systems", () => {
    expect(byName.get("RUNOFFDEPTH")?.inputs[0]).toMatchObject({ name: "rain", us: "in", metric: "mm" });
  });

  it("warns of what is from memory, on every page", () => {
    const isFromMemory = (name: string) =>
      catalogue.find((declared) => declared.name === name)?.sources.some(({ evidence }) => evidence === "from memory") === true;
    const fromMemory = entries.filter(({ name }) => isFromMemory(name));
    expect(fromMemory.length).toBeGreaterThan(0);
    for (const { sources } of fromMemory) expect(sources.join()).toContain("(from memory, check before use)");
    expect(helpPage()).toContain("from memory, check before use");
  });

  it("shows a worked example with its answer and where it is from", () => {
    // TR-55, 2nd ed., 1986, table 2-1 (read in transcription).
    expect(byName.get("RUNOFFDEPTH")?.example).toMatchObject({ formula: "=SOAK.RUNOFFDEPTH(4, 80)", answer: "2.04" });
  });

  it("keeps text as text on the help page", () => {
    expect(helpPage()).toContain("&gt;");
    expect(helpPage()).not.toMatch(
      /<(?!\/?(?:!doctype|html|head|meta|title|link|body|header|h1|h2|h3|p|nav|ul|li|a|main|section|code|div|table|thead|tbody|tr|th|td|strong)\b)/,
    );
  });
});

describe("What the repository keeps of the catalogue", () => {
  it.each(Object.entries(keptFiles()))("%s is what npm run reference writes", async (path, text) => {
    const kept = await readFile(new URL(`../../../${path}`, import.meta.url), "utf8");
    expect(kept === text, `${path} differs from the declarations: run npm run reference and commit it`).toBe(true);
  });
});
