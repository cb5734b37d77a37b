/** The second half of the walk: dig, planting, what was built, the looks after it, and the report. */
import { expect, it } from "vitest";
import { isoDate } from "../../addin/actions/dates.ts";
import { asBuiltSheet } from "../../addin/records/as-built.ts";
import { followUpsSheet } from "../../addin/records/follow-ups.ts";
import { plantingSheet } from "../../addin/records/planting.ts";
import { turnCalendarTo } from "./calendar.ts";
import { answerStep, strike, tabTo } from "./keyboard.ts";
import { button, openTab, pane, pickStage, recordsOf, unfoldAll } from "./pane.ts";
import * as byHand from "./sail-loft-by-hand.ts";
import { SITE_ID, type YardWalk } from "./yard-walk.ts";

/** Registers the steps after the plans are made and agreed on. */
export function walkFromTheDigOn(yard: YardWalk): void {
  it("is on the board with the ticket's last days, dug by four people, and their hours and loads stand on Dig days", async () => {
    const { page } = yard;
    await turnCalendarTo(page, "2027-04-17");
    await button(page, /All yards/).click();
    await openTab(page, "Next");
    await yard.field("Find a yard").fill(SITE_ID);
    await pane(page)
      .locator(".board-group .yard-button", {
        hasText: "Ticket TF-7031 is in force until 2027-04-21: 4 days are left. Dig by then, or ask for a new one.",
      })
      .click();
    await pickStage(page, "Planting");
    expect(await yard.gate().innerText()).toContain(
      "The levels were not checked. Check floor and berm all around before anything is planted.",
    );
    await pickStage(page, "Dig day");
    await tabTo(page, "Who");
    for (const key of ["Kit Marlow, Mina Tarr, Ivo Reed", "Tab", "0830AM"]) await strike(page, key);
    await tabTo(page, "Out");
    for (const key of ["12", "Enter"]) await strike(page, key);
    await pane(page).getByText("A time is not typed to its end: give hours, minutes, and AM or PM where they are asked for.").waitFor();
    for (const key of ["00PM", "Enter"]) await strike(page, key);
    await yard.said("3 people signed in: written to Dig days.");
    await yard.field("Who").fill("Lena Holt");
    await yard.field("In").fill("");
    await yard.field("Out").fill("");
    await yard.field("Hours").fill("2");
    await page.keyboard.press("Enter");
    await yard.said("Signed in: written to Dig days.");
    // Three people from 8:30 to 12:00 are 3 x 3.5 h, and 2 h of the fourth.
    await expect.poll(() => pane(page).getByRole("region", { name: "Totals" }).innerText()).toContain("2027-04-17 4 people, 12.5 h.");
    for (const [item, quantity] of [
      ["soil dug, in place", "7.4"],
      ["compost brought, loose", "0.75"],
    ] as const) {
      await yard.field("Item").selectOption(item);
      await yard.field("Quantity").fill(quantity);
      await button(page, "Write the quantity").click();
      await yard.said("Written to Dig days.");
    }
    const moved = pane(page).getByRole("region", { name: "Really dug, hauled and placed" });
    // 7.4 / 7.3075 = 101 %, 0.75 / 0.682 = 110 %.
    await expect.poll(() => moved.innerText()).toContain("soil dug, in place 7.4 cu yd of 7.31 cu yd designed (101 %).");
    expect(await moved.innerText()).toContain("compost brought, loose 0.75 cu yd of 0.68 cu yd designed (110 %).");
    await tabTo(page, /Everyone was briefed/);
    await answerStep(page, "Briefing", "Space");
    await answerStep(page, "Emergency", "Lena Holt 555-0117; clinic at Mill Gate; 17 Sailmaker Lane");
    for (const title of ["Minors and waivers", "Marks", "Silt kept in the yard", "Soil", "Depth", "Wheels off the floor", "Levels"])
      await answerStep(page, title, "Space");
    await pickStage(page, "Planting");
    expect(await yard.gate().count()).toBe(0);
  });

  it("has a planting plan drafted in its zones, which the estimate then follows", async () => {
    const { page } = yard;
    await openTab(page, "Planting");
    await yard.field("Sun here").selectOption("sun");
    await unfoldAll(page);
    await button(page, "Suggest plants").click();
    await button(page, "Draft the plan").click();
    const summary = pane(page).getByText(/^\d+ plants of \d+ kinds in \d+ clumps\.$/);
    await summary.waitFor();
    const [, drawn] = /^(\d+) plants/.exec(await summary.innerText()) ?? [];
    for (const [zone, area] of Object.entries(byHand.zones)) {
      expect(
        await pane(page)
          .getByText(`Zone ${zone}, ${area.toLocaleString("en-US", { maximumFractionDigits: 1 })} sq ft: `)
          .count(),
        zone,
      ).toBe(1);
    }
    await button(page, "Write to the Planting sheet").click();
    await yard.said("The planting plan of Y-017 was written to Planting.");
    const clumps = (await recordsOf(page, plantingSheet, SITE_ID)).map(({ record }) => record);
    expect(String(clumps.reduce((sum, { planned }) => sum + (planned ?? 0), 0))).toBe(drawn);
    // Between 1 and 1.5 ft apart plants come in quarts; what comes in plugs and gallons is a line of its own.
    const quarts = clumps.reduce(
      (sum, { planned, spacing }) => sum + ((spacing ?? 0) > 1.02 && (spacing ?? 0) <= 1.52 ? (planned ?? 0) : 0),
      0,
    );
    await openTab(page, "Estimate");
    await expect
      .poll(() => pane(page).getByRole("region", { name: "Draft from the basin" }).innerText())
      .toContain(`plant quart: 113 plant on the sheet, ${quarts} plant by the basin`);
    await button(page, `plant quart: Take ${quarts} plant`).click();
    await yard.said(`plant quart was set to ${quarts} plant.`);
    // Whole trays of 32 at 3.20 a quart, in place of four of them.
    const cash = byHand.cash + (Math.ceil(quarts / 32) - 4) * 32 * 3.2;
    await expect
      .poll(() => yard.total("Cash lines"))
      .toBe(cash.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 }));
  });

  it("has its plants counted as they go into the ground, clump by clump", async () => {
    const { page } = yard;
    await yard.nextDay("2027-04-24", "As-built");
    expect(await yard.gate().innerText()).toContain("The plants put in are not counted. Count them before the garden is measured.");
    await pickStage(page, "Planting");
    const rows = await recordsOf(page, plantingSheet, SITE_ID);
    const planned = rows.reduce((sum, { record }) => sum + (record.planned ?? 0), 0);
    const [first] = rows;
    const { plant, zone } = first?.record ?? {};
    await pane(page).getByText("Change a count", { exact: true }).click();
    await pane(page).getByLabel(`${plant}, zone ${zone}, ${first?.record.planned} planned`).first().fill("1");
    const planted = planned - (first?.record.planned ?? 0) + 1;
    await button(page, `Write ${planted} plants in ${rows.length} clumps as planted`).click();
    await yard.said(`${planted} plants in ${rows.length} clumps: written to Planting.`);
    await expect
      .poll(() => pane(page).getByRole("region", { name: "What went in the ground" }).innerText())
      .toContain(`${planted} plants in the ground of ${planned} planned, in ${rows.length} clumps.`);
    const counted = (await recordsOf(page, plantingSheet, SITE_ID)).map(({ record }) => [record.planted, isoDate(record.plantedOn ?? 0)]);
    expect(counted).toEqual(rows.map(({ record }, place) => [place === 0 ? 1 : record.planned, "2027-04-24"]));
    await tabTo(page, "Plants put in the ground");
    await answerStep(page, "Plants", String(planted));
    await answerStep(page, "Watered in", "Space");
    await answerStep(page, "Mulch", "Space");
    await answerStep(page, "Who waters", "Lena Holt");
    await pickStage(page, "As-built");
    expect(await yard.gate().count()).toBe(0);
  });

  it("is measured as it was built, and holds 96 percent of what was designed", async () => {
    const { page } = yard;
    await yard.nextDay("2027-04-26", "After a week");
    expect(await yard.gate().innerText()).toContain("The finished garden is not measured. Measure it and write it to As-built.");
    await pickStage(page, "As-built");
    await button(page, "Measure what was built").click();
    await yard.field("Shape").selectOption("rectangle");
    await tabTo(page, "Floor length");
    for (const key of ["14", "Tab", "9.4", "Tab", "4.75", "Tab", "4", "Tab", "6", "Tab", "2", "Tab", "2.5", "Tab", "22"])
      await strike(page, key);
    const lines = pane(page).locator(".build-lines");
    await expect.poll(() => lines.innerText()).toContain("Holds 84.5 cu ft: 96 % of the 88.4 cu ft designed.");
    expect(await lines.innerText()).toContain("Drained in 22 h: within the 48 h that the program allows. Design expects 24.5 h.");
    await button(page, "Write to As-built").click();
    await yard.said("Written to As-built.");
    await expect
      .poll(async () => Number((await recordsOf(page, asBuiltSheet, SITE_ID))[0]?.record.waterHeld))
      .toBeCloseTo(byHand.heldAsBuilt, 6);
    await tabTo(page, /In at the inlet/);
    await answerStep(page, "Flow test", "Space");
    await answerStep(page, "Against the design", "Space");
    await pickStage(page, "After a week");
    expect(await yard.gate().count()).toBe(0);
  });

  it("has its looks planned from the day it was planted, and the one after a week made with letters alone", async () => {
    const { page } = yard;
    await button(page, "Write 5 rows to Follow-ups").click();
    const planned = async () =>
      (await recordsOf(page, followUpsSheet, SITE_ID)).map(({ record }) => [record.kind, isoDate(record.due ?? 0), record.finding]);
    // Planted on 2027-04-24: 7 days, the same day of the next month, of the next year and of the year after.
    await expect.poll(planned).toEqual([
      ["watering", "2027-05-01", null],
      ["1 week", "2027-05-01", null],
      ["1 month", "2027-05-24", null],
      ["1 year", "2028-04-24", null],
      ["yearly", "2029-04-24", null],
    ]);
    // An inch a week over what was measured, 17.17 x 12.57 ft at the rim: 215.7 / 12 cu ft.
    expect(await pane(page).getByRole("region", { name: "Watering" }).innerText()).toContain(
      `about ${byHand.weeklyGallons.toFixed(0)} gallons a week (1 in over 215.7 sq ft, the garden as built)`,
    );
    await yard.nextDay("2027-05-01", "After a week");
    await button(page, "Record: Look after a week, 2027-05-01, due today").click();
    await yard.look("pppp", "Look after a week");
    await expect.poll(async () => (await planned())[1]).toEqual(["1 week", "2027-05-01", "pass"]);
  });

  it("is looked at after a storm in the first month: thin mulch is watched, and the mulch to bring is said", async () => {
    const { page } = yard;
    await yard.nextDay("2027-05-24", "After a month");
    await button(page, /^Record: Look after a storm, first months, 2027-05-24/).click();
    await yard.field("Water stood for").focus();
    for (const key of ["20", "Enter", "23", "Enter", "1.5", "Enter", "p", "96", "Enter", "5", "Enter", "p"]) await strike(page, key);
    // 1.5 in of mulch over 215.7 sq ft: 215.7 x 1.5 / 12 / 27 cu yd.
    expect(byHand.mulchToBring.toFixed(2)).toBe("1.00");
    expect(await pane(page).getByText("Bring 1 cu yd to make it 3 in over 215.7 sq ft, clear of the stems.").count()).toBeGreaterThan(0);
    await button(page, "Write the look").click();
    await yard.said("Look after a storm, first months: written to Follow-ups and Visits.");
    const looks = (await recordsOf(page, followUpsSheet, SITE_ID)).map(({ record }) => [
      record.kind,
      isoDate(record.due ?? 0),
      record.finding,
      record.action,
    ]);
    expect(looks[2]).toEqual(["1 month", "2027-05-24", "watch", "Watch: Mulch."]);
    // The second look of the first six months.
    expect(looks.at(-1)).toEqual(["1 month", "2027-10-24", null, null]);
  });

  it("passes the look after a year, and stands in the report as built", async () => {
    const { page } = yard;
    await yard.nextDay("2028-04-24", "After a year");
    await button(page, /^Record: Look after a year, 2028-04-24/).click();
    await yard.look("ppppppppppp", "Look after a year");
    const year = (await recordsOf(page, followUpsSheet, SITE_ID)).find(({ record }) => record.kind === "1 year");
    expect([year?.record.finding, isoDate(year?.record.done ?? 0)]).toEqual(["pass", "2028-04-24"]);
    expect(await pane(page).locator(".stage-picker summary").innerText()).toContain("Done");

    await button(page, /All yards/).click();
    await openTab(page, "Report");
    await unfoldAll(page);
    await yard.field("From").fill("2027-04-01");
    await yard.field("To").fill("2027-04-30");
    const built = async (label: string) =>
      await pane(page)
        .locator(".report-line", { has: page.locator("h3", { hasText: new RegExp(`^${label}$`) }) })
        .first()
        .locator(".report-number")
        .first()
        .innerText();
    await expect.poll(() => built("Yards")).toBe("1");
    expect([await built("Contributing area treated"), await built("Floor area"), await built("Water held")]).toEqual([
      "700 sq ft",
      "131.6 sq ft",
      "84.53 cu ft",
    ]);
    expect([await built("Volunteers"), await built("Volunteer hours"), await built("Value of the volunteer hours")]).toEqual([
      "4",
      "12.5 h",
      "397.50",
    ]);
  });
}
