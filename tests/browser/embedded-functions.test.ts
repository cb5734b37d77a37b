import { beforeEach, describe, expect, it } from "vitest";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { expectCell, formula, goTo, typeInto, value, values } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { onProgramPage } from "./pane.ts";

describe("The worksheet functions in the page without Excel", () => {
  let opened: OpenPage;

  onProgramPage((ready) => {
    opened = ready;
  });

  beforeEach(async () => {
    const empty = { sheet: "Program", row: 20, column: 7, rows: 12, columns: 6 };
    const blanks = Array.from({ length: 12 }, () => Array.from({ length: 6 }, () => null));
    await opened.page.evaluate(([range, rows]) => window.soakbook?.workbook.writeValues([{ range, values: rows }]), [
      empty,
      blanks,
    ] as const);
  });

  it("the selected cell's error is explained in words, spilled cells included, until it is mended", async () => {
    const line = opened.page.locator("#cell-sentence");
    await typeInto(opened.page, "Program!H21", "4");
    await typeInto(opened.page, "Program!H22", "-4");
    await typeInto(opened.page, "Program!I21", "=SOAK.RUNOFFDEPTH(H21:H22,80)");
    expect(await value(opened.page, "Program!I22")).toBe("#VALUE!");
    await goTo(opened.page, "Program!I22");
    await expect.poll(() => line.textContent()).toMatch(/^Rain .*0.*\.$/);
    expect(await line.getAttribute("role")).toBe("status");
    await goTo(opened.page, "Program!I21");
    await expect.poll(() => line.textContent()).toBe("");

    await typeInto(opened.page, "Program!H22", "2");
    await goTo(opened.page, "Program!I22");
    await expectCell(opened.page, "Program!I22", (await values(opened.page, "Program!I22")).flat()[0] ?? null);
    expect(await value(opened.page, "Program!I22")).toBeCloseTo(0.56, 2);
    expect(await line.textContent()).toBe("");
  });

  it("a text that starts with = stays a text when it is opened for editing and confirmed", async () => {
    const typed = { sheet: "Program", row: 20, column: 7, rows: 1, columns: 1 };
    await opened.page.evaluate((range) => window.soakbook?.workbook.writeValues([{ range, values: [["=1+1"]] }]), typed);
    await goTo(opened.page, "Program!H21");
    await opened.page.keyboard.press("F2");
    await opened.page.keyboard.press("Enter");
    await expectCell(opened.page, "Program!H21", "=1+1");
    expect(await formula(opened.page, "Program!H21")).toBe("");
  });

  // All of them are registered by one loop: the first, the last and the one with the most arguments are typed.
  const longest = catalogue.toSorted((one, other) => other.parameters.length - one.parameters.length)[0];
  const typed = [catalogue[0], longest, catalogue.at(-1)].flatMap((declared) => declared ?? []);
  it("a function is offered with its summary as it is typed, and its arguments are explained", async () => {
    const shown = (): Promise<string> => opened.page.locator("body").innerText();
    await goTo(opened.page, "Program!H21");
    for (const { name, summary, parameters } of typed) {
      await opened.page.keyboard.type(`=SOAK.${name}`);
      await expect.poll(shown).toContain(summary);
      await opened.page.keyboard.type("(");
      const labels = parameters.map(({ label, optional }) => (optional ? `[${label}]` : label));
      await expect.poll(shown).toContain(`SOAK.${name}(${labels.join(",")})`);
      await opened.page.keyboard.press("Escape");
      await opened.page.keyboard.press("Escape");
    }
  });

  it("throws nothing that no part of the page caught", () => {
    expect(opened.faults).toEqual([]);
  });
});
