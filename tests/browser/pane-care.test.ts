import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { isoDate } from "../../addin/actions/dates.ts";
import { asBuiltSheet } from "../../addin/records/as-built.ts";
import { digDaysSheet } from "../../addin/records/dig-days.ts";
import { followUpsSheet } from "../../addin/records/follow-ups.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import type { Sheet, SheetRow } from "../../addin/records/sheet.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import type { OpenPage } from "./page.ts";
import { button, narrowPane, onExcelPage, openYard, pane } from "./pane.ts";
import { expectUsable } from "./usable.ts";

const SITE_ID = "Y-001";

describe("From the dig day to the look after a week", () => {
  let opened: OpenPage;
  let page: Page;

  const status = () => pane(page).locator(".status-line p");
  const field = (label: string) => pane(page).getByLabel(label, { exact: true });
  const part = (name: string) => pane(page).getByRole("region", { name, exact: true });

  async function rows<S extends Sheet>(sheet: S): Promise<readonly SheetRow<S>[]> {
    const cells = await page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name);
    return readRecords(sheet, cells[0] ?? []).rows.filter(({ record }) => (record as { siteId: unknown }).siteId === SITE_ID);
  }

  async function openStage(name: string): Promise<void> {
    await pane(page).locator(".stage-picker summary").click();
    await pane(page).locator(".stage-button", { hasText: name }).first().click();
    await pane(page).locator("h2", { hasText: name }).first().waitFor();
  }

  onExcelPage(
    (ready) => {
      opened = ready;
      page = ready.page;
    },
    { colorScheme: "dark" },
  );

  beforeAll(async () => {
    await narrowPane(page);
    await openYard(page, 0, "Visits");
  });

  it("two people sign in with Enter, and a second sign-in of one of them is refused in words", async () => {
    await openStage("Dig day");
    await field("Day of the visit").fill("2026-05-16");
    await field("Who").fill("Wren Alder, Ash Pell");
    await field("Hours").fill("3");
    await field("Hours").press("Enter");
    await expect.poll(() => status().innerText()).toBe("2 people signed in: written to Dig days.");
    await expect
      .poll(async () => (await rows(digDaysSheet)).map(({ record }) => [record.entry, record.who, record.hours, isoDate(record.date ?? 0)]))
      .toEqual([
        ["sign-in", "Wren Alder", 3, "2026-05-16"],
        ["sign-in", "Ash Pell", 3, "2026-05-16"],
      ]);
    // Two people, three hours each.
    await expect.poll(() => part("Totals").innerText()).toContain("2 people, 6 h.");

    await page.keyboard.type("wren alder");
    await page.keyboard.press("Enter");
    await pane(page).getByText("wren alder has signed in on 2026-05-16 already, at Y-001: hours of one person count once a day.").waitFor();
    expect(await rows(digDaysSheet)).toHaveLength(2);
    await part("Sign in").getByRole("button", { name: "Discard" }).click();
  });

  it("a planting day takes sign-ins too, and counts them beside those of the dig", async () => {
    await openStage("Planting");
    await field("Day of the visit").fill("2026-05-17");
    await field("Who").fill("Ash Pell");
    await field("Hours").fill("2.5");
    await field("Hours").press("Enter");
    await expect.poll(() => status().innerText()).toBe("Signed in: written to Dig days.");
    // 6 h on the dig day and 2.5 h on this one.
    await expect.poll(() => part("Totals").innerText()).toContain("2 days, 8.5 h in all.");
    await expectUsable(page);
    await openStage("Dig day");
  });

  it("nothing of it is cut off, too small or out of reach at 320 pixels", async () => {
    await expectUsable(page);
  });

  it("what was built is held beside the design while it is typed, and the sheet works out the water from it", async () => {
    await openStage("As-built");
    await button(page, "Measure what was built").click();
    await field("Floor length").fill("17");
    await field("Floor width").fill("7");
    await field("Ponding depth").fill("6");
    await field("Side slope").fill("3");
    await field("Berm above sill, lowest").fill("-0.5");
    // Handbook of rain gardens, test G3: such an ellipse has 93.46 sq ft of floor and holds 62.05 cu ft.
    await expect.poll(() => part("As-built").innerText()).toContain("Holds 62 cu ft");
    expect(await part("As-built").innerText()).toContain("Berm 0.5 in below the sill: water leaves there first. Fill it.");
    await expectUsable(page);
    await button(page, "Write to As-built").click();
    await expect.poll(() => status().innerText()).toBe("Written to As-built.");
    await expect.poll(async () => Number((await rows(asBuiltSheet))[0]?.record.waterHeld)).toBeCloseTo(62.05, 2);
    const [built] = await rows(asBuiltSheet);
    expect(built?.record.units).toBe("us");
    expect(Number(built?.record.floorArea)).toBeCloseTo(93.46, 2);
  });

  it("the looks are planned from a day, and one made with the keyboard is written with its repair and what is due next", async () => {
    await openStage("After a week");
    await field("Planted or finished on").fill("2026-05-16");
    await button(page, "Write 5 rows to Follow-ups").click();
    await expect
      .poll(async () => (await rows(followUpsSheet)).map(({ record }) => [record.kind, isoDate(record.due ?? 0)]))
      .toEqual([
        ["watering", "2026-05-23"],
        ["1 week", "2026-05-23"],
        ["1 month", "2026-06-16"],
        ["1 year", "2027-05-16"],
        ["yearly", "2028-05-16"],
      ]);
    await expect.poll(() => part("Watering").innerText()).toContain("the garden as built");

    await button(page, /^Record: Look after a week/).click();
    await field("Day of the look").fill("2026-05-24");
    await pane(page).getByRole("radio").first().focus();
    // Watering, sill, erosion, inlet: in the order of the checklist.
    for (const key of ["p", "p", "f", "p"]) await page.keyboard.press(key);
    await expect.poll(() => pane(page).locator(".care-plan").last().innerText()).toContain("2026-06-07: Repair.");
    await expectUsable(page);
    await button(page, "Write the look").click();
    await expect.poll(() => status().innerText()).toBe("Look after a week: written to Follow-ups and Visits.");

    const followUps = await rows(followUpsSheet);
    expect(followUps.find(({ record }) => record.kind === "1 week")?.record).toMatchObject({ finding: "fail" });
    expect(followUps.filter(({ record }) => record.kind === "repair").map(({ record }) => isoDate(record.due ?? 0))).toEqual([
      "2026-06-07",
    ]);
    const seen = (await rows(visitsSheet)).filter(({ record }) => record.stage === "week");
    expect(seen.map(({ record }) => record.verdict).filter((verdict) => verdict !== null)).toEqual(
      expect.arrayContaining(["pass", "fail"]),
    );
    expect(seen[0]?.record).toMatchObject({ step: "week-date", answer: "2026-05-24" });
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
