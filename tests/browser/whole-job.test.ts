/** One yard from the first call to the look after a year, as a coordinator does it: by keyboard and mouse, day by day. */
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { pricesSheet, startingPrices } from "../../addin/records/prices.ts";
import { placeSettingCell, settingCell } from "../../addin/records/program.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import { addressOf } from "../../addin/workbook/port.ts";
import { turnCalendarTo } from "./calendar.ts";
import { goTo, typeDown, typeInto, value } from "./grid.ts";
import { answerStep, dayKeys, focused, strike, tabTo } from "./keyboard.ts";
import { PageHost, savedBytes } from "./page.ts";
import { address, button, openTab, openYard, pane, pickStage, recordsOf } from "./pane.ts";
import * as byHand from "./sail-loft-by-hand.ts";
import { walkFromTheDigOn } from "./whole-job-from-the-dig.ts";
import { PLACE, SITE_ID, YardWalk } from "./yard-walk.ts";

/** What a screening asks about the ground around the place. */
const BESIDE_AND_BELOW = [
  "Basement or sump",
  "Retaining wall",
  "Karst or swelling clay",
  "Fill or buried tank",
  "Easement, right of way",
  "Overhead lines",
  "Sewer lateral",
] as const;

/** As a coordinator asked for them, column by column of Prices; what has no price here is not on the estimate. */
const PRICE_LIST = {
  unitPrice: {
    sand: "38",
    topsoil: "32",
    compost: "45",
    "shredded mulch": "36",
    "river stone": "60",
    "plant quart": "3.2",
    "tool hire": "85",
    "soil disposal": "20",
    "volunteer hour": "31.8",
  },
  packageSize: { "plant quart": "32" },
  minimumOrder: { topsoil: "1" },
  delivery: { sand: "40" },
} as const satisfies Partial<Record<keyof typeof pricesSheet.columns, Readonly<Record<string, string>>>>;

describe("The sail loft in Sailmaker Lane, from the first call to the look after a year", () => {
  const yard = new YardWalk();
  let host: PageHost;

  beforeAll(async () => {
    host = await PageHost.start();
    await yard.start(host, "2027-03-01");
  });

  afterAll(async () => {
    await host.close();
  });

  it("is added with the keyboard alone, under a number of its own", async () => {
    const { page } = yard;
    await tabTo(page, /All yards/);
    await page.keyboard.press("Enter");
    await tabTo(page, "Add a yard");
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toBe("Yard");
    await page.keyboard.type("Sail loft");
    await page.keyboard.press("Tab");
    await page.keyboard.type("17 Sailmaker Lane");
    await tabTo(page, "Soil group, if known");
    await page.keyboard.press("B");
    await tabTo(page, "Add the yard");
    await page.keyboard.press("Enter");
    await expect.poll(() => pane(page).locator("h1").textContent()).toBe("Y-017 Sail loft");
    const [row] = await recordsOf(page, sitesSheet, SITE_ID);
    expect(row?.record).toMatchObject({ yard: "Sail loft", address: "17 Sailmaker Lane", units: "us", soilGroup: "B" });
  });

  it("is not visited before the owner let us in, and the enquiry is entered with Enter from step to step", async () => {
    const { page } = yard;
    await openTab(page, "Visits");
    await pickStage(page, "Screening visit");
    expect(await yard.gate().innerText()).toContain(
      "It is not on record that the owner lets us in. Ask, and answer Leave to enter under Enquiry.",
    );
    await pickStage(page, "Enquiry");
    await tabTo(page, "Your name");
    await page.keyboard.type("Ivo Reed");
    await tabTo(page, "Name and telephone of the person to ask for");
    await answerStep(page, "Contact", "Lena Holt, 555-0117");
    await answerStep(page, "Problem", "Water stands at the back door after every storm");
    await answerStep(page, "In the area", "Space");
    await answerStep(page, "Leave to enter", "Space");
    await answerStep(page, "Pictures", "2");
    const answers = await recordsOf(page, visitsSheet, SITE_ID);
    expect(answers.map(({ record }) => [record.step, record.answer, record.verdict, record.by])).toEqual([
      ["contact", "Lena Holt, 555-0117", null, "Ivo Reed"],
      ["problem", "Water stands at the back door after every storm", null, "Ivo Reed"],
      ["in-area", "Yes", "pass", "Ivo Reed"],
      ["permission", "Yes, the owner agreed", "pass", "Ivo Reed"],
      ["photo-consent", "Kept for the records only", "pass", "Ivo Reed"],
    ]);
    await pickStage(page, "Screening visit");
    expect(await yard.gate().count()).toBe(0);
  });

  it("is screened on one walk by keyboard: everything passes but the property line, which is referred", async () => {
    const { page } = yard;
    await yard.nextDay("2027-03-08", "Screening visit");
    await tabTo(page, /Distance from the nearest edge/);
    await answerStep(page, "Foundation", "16");
    await answerStep(page, "Ground slope", "6", "Tab", "150");
    await answerStep(page, "Property line", "8");
    await answerStep(page, "Septic, basin uphill of it", "Tab", "Space");
    await answerStep(page, "Septic, basin downhill of it", "Tab", "Space");
    await answerStep(page, "Well", "Tab", "Space");
    await answerStep(page, "Water table or rock", "Tab", "Space");
    await answerStep(page, "How it is known", "3");
    await answerStep(page, "Known down to", "40");
    for (const title of ["Wet spot", "Trees", "Steep ground nearby", "Overflow", "Lead in soil", ...BESIDE_AND_BELOW])
      await answerStep(page, title, "Space");
    // 6 in over 150 in is 4 in 100.
    await yard.designs("groundSlopePercent", 4);
    expect(await pane(page).locator(".stage-verdict").innerText()).toContain(
      "Refer: ask the licensed or official person named in your program, and write down what was decided before going on.",
    );
    expect(await yard.card("Property line").locator(".verdict").innerText()).toBe("Refer");
    await openTab(page, "Yard");
    expect(await pane(page).getByRole("region", { name: "Next", exact: true }).innerText()).toContain(
      "Refer before going on: Property line.",
    );
    expect(await pane(page).locator(".standing").innerText()).toContain("Ask");
  });

  it("goes on only when somebody decided on the property line: Next leads to that step, and the decision is on record and undone", async () => {
    const { page } = yard;
    await openTab(page, "Visits");
    await pickStage(page, "One-call ticket");
    expect(await yard.gate().innerText()).toContain('Screening visit says refer: Property line, "8 ft".');
    await openTab(page, "Yard");
    await tabTo(page, "Go to Property line");
    await page.keyboard.press("Enter");
    const inStep = () => page.evaluate(() => document.activeElement?.closest(".step")?.querySelector(".step-title")?.textContent ?? "none");
    await expect.poll(inStep).toBe("Property line");
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute("type"))).toBe("radio");
    // Written without a paper it is none.
    for (const key of ["Space", "ArrowDown", "Tab", "Rhea Dunn, zoning office", "Tab", "8 ft, spill to the lane", "Enter"])
      await strike(page, key);
    await expect.poll(() => yard.card("Property line").innerText()).toContain("On what paper is missing.");
    await tabTo(page, "On what paper");
    for (const key of ["Letter of 8 March, binder 3", "Enter"]) await strike(page, key);
    await yard.said("Property line: the decision was written to Visits.");
    const decided = (await recordsOf(page, visitsSheet, SITE_ID)).at(-1)?.record;
    expect(decided).toMatchObject({
      step: "decision: property-line",
      answer: "Go on, on conditions",
      by: "Rhea Dunn, zoning office",
      note: "8 ft, spill to the lane",
      link: "Letter of 8 March, binder 3",
      verdict: "pass",
    });
    expect(await pane(page).locator(".stage-picker summary").innerText()).toContain("Done");
    await button(page, "Undo: Property line: the decision was written to Visits.").click();
    await expect.poll(() => pane(page).locator(".stage-picker summary").innerText()).toContain("Ask");
    await button(page, /^Undo: Undone: Property line/).click();
    await expect.poll(() => pane(page).locator(".stage-picker summary").innerText()).toContain("Done");
    await openTab(page, "Yard");
    expect(await pane(page).getByRole("region", { name: "Next", exact: true }).innerText()).not.toContain("Refer");
  });

  it("has its roof measured along the walls and its drive by area, and Design counts what drains here", async () => {
    const { page } = yard;
    await button(page, "Add a surface").click();
    await yard.field("Surface").fill("Roof over the garden, half");
    await yard.field("Cover").selectOption("roof");
    await yard.field("How it is measured").selectOption("roof footprint");
    await yard.field("Length").fill("38");
    await yard.field("Width").fill("24");
    await yard.field("Overhang").fill("1");
    await expect.poll(() => pane(page).locator(".measured-area").innerText()).toBe("Area: 1,040 sq ft");
    await yard.field("Share draining here").fill("0.5");
    await button(page, "Write to the sheet").click();
    await yard.said("Written to Surfaces.");
    await button(page, "Add a surface").click();
    await yard.field("Surface").fill("Drive");
    await yard.field("Cover").selectOption("paving");
    await yard.field("Area").fill("300");
    await yard.field("Share draining here").fill("0.6");
    await button(page, "Write to the sheet").click();
    await yard.designs("contributingArea", byHand.contributingArea);
    const surfaces = await recordsOf(page, surfacesSheet, SITE_ID);
    expect(surfaces.map(({ record }) => [record.area, record.howMeasured])).toEqual([
      [byHand.roofArea, "roof footprint: length 38 ft, width 24 ft, overhang 1 ft"],
      [300, null],
    ]);
  });

  it("is not dug before the ticket is lawful and every operator has answered", async () => {
    const { page } = yard;
    await typeInto(page, addressOf(placeSettingCell()), "Washington");
    await goTo(page, address(sitesSheet, PLACE, "yard"));
    await openTab(page, "Visits");
    await pickStage(page, "Test visit");
    expect(await yard.gate().innerText()).toContain(
      "There is no one-call ticket. Call before anything is dug, the test hole included, and write its number down.",
    );
    await pickStage(page, "One-call ticket");
    await tabTo(page, "Number that the one-call center gave");
    await answerStep(page, "Ticket number", "TF-7031");
    await answerStep(page, "Dig outlined", "Space");
    await answerStep(page, "Kind of ticket", "Space");
    await answerStep(page, "Name on the ticket", "Space");
    const issued = await yard.openCard("Issued on");
    await issued.getByLabel("Day on which the center issued the ticket").fill("2027-03-08");
    await issued.getByLabel("Hour, if it is known").fill("09:20");
    await button(page, "Write the answer: Issued on").click();
    await yard.said("Issued on: written to Visits.");
    const lawful = await yard.openCard("Lawful from");
    await expect.poll(() => lawful.innerText()).toContain("The rule of Washington, as it was read on 2026-11-29");
    // Nothing fills the day in. Two full business days there: Monday 8 March, so Tuesday and Wednesday pass, and Thursday is lawful.
    await lawful.getByLabel("First day on which digging is lawful, as the ticket says it").fill("2027-03-10");
    await expect
      .poll(() => lawful.innerText())
      .toContain("Look at the ticket again: 2027-03-10 is earlier than the rule of Washington comes to, which is not before 2027-03-11.");
    await button(page, "Write the answer: Lawful from").click();
    await expect.poll(() => lawful.innerText()).toContain("Hour is missing. Type it from the ticket, such as 07:00.");
    await lawful.getByLabel("First day on which digging is lawful, as the ticket says it").fill("2027-03-11");
    await lawful.getByLabel("Hour", { exact: true }).fill("07:00");
    expect(await lawful.innerText()).not.toContain("Look at the ticket again");
    await button(page, "Write the answer: Lawful from").click();
    await yard.said("Lawful from: written to Visits.");
    expect(await pane(page).locator(".ticket").innerText()).toContain("TF-7031, lawful from 2027-03-11 at 07:00, until not on record");
    await answerStep(page, "Last day", dayKeys("2027-04-21"));
    await answerStep(page, "Operators", "Ferry Power, Millrace Water");
    await answerStep(page, "Ferry Power", "2");
    await answerStep(page, "Millrace Water", "4");
    await (await yard.openCard("Marks and answers")).getByText("All answered, ticket in force").click();
    await yard.said("Marks and answers: written to Visits.");
    await answerStep(page, "Private lines", "Space");

    await pickStage(page, "Test visit");
    expect(await yard.gate().innerText()).toContain(
      "Millrace Water has not answered. Ask the one-call center; no answer is not an all-clear.",
    );
    expect(await yard.gate().innerText()).toContain("it is from 2027-03-11 at 07:00. Wait, even where the marks are there.");
    await openTab(page, "Hole test");
    expect(await pane(page).getByText("Do not dig.").isVisible()).toBe(true);
    await yard.nextDay("2027-03-12", "One-call ticket");
    await (await yard.openCard("Millrace Water")).getByText("Marked").click();
    await yard.said("Millrace Water: written to Visits.");
    await pickStage(page, "Test visit");
    expect(await yard.gate().count()).toBe(0);
    await openTab(page, "Hole test");
    expect(await pane(page).getByText("Do not dig.").count()).toBe(0);
  });

  it("has two holes tested, and designs with half the geometric mean of their rates", async () => {
    const { page } = yard;
    await openTab(page, "Visits");
    await pickStage(page, "Design");
    expect(await yard.gate().innerText()).toContain(
      "The soil is not tested: no hole gives a rate. Dig and time a test hole before anything is sized.",
    );
    await openTab(page, "Hole test");
    await tabTo(page, "Hole name");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("A");
    await tabTo(page, "Yes");
    await page.keyboard.press("Space");
    await tabTo(page, "Hole depth");
    await page.keyboard.type("18");
    await page.keyboard.press("Tab");
    await page.keyboard.type("10");
    await tabTo(page, "Type a reading");
    // From here on Enter begins the next reading, and the first time it presses the button.
    for (const [place, [minutes, water]] of (
      [
        ["0", "9"],
        ["20", "8"],
        ["40", "7.1"],
        ["60", "6.3"],
      ] as const
    ).entries()) {
      await page.keyboard.press("Enter");
      await expect.poll(() => focused(page)).toBe(`Minutes of reading ${place + 1}`);
      await page.keyboard.type(minutes);
      await page.keyboard.press("Tab");
      await page.keyboard.type(water);
    }
    await tabTo(page, "Write to the sheet");
    await page.keyboard.press("Enter");
    await yard.said("Hole A was added to Hole tests.");

    await yard.field("Hole").selectOption("new");
    await yard.field("Hole name").fill("B");
    await yard.field("Yes").check();
    await yard.field("Hole depth").fill("18");
    await yard.field("Hole diameter").fill("8");
    for (const [place, [minutes, water]] of (
      [
        ["0", "8"],
        ["20", "7.3"],
        ["40", "6.7"],
        ["60", "6.1"],
      ] as const
    ).entries()) {
      await button(page, "Type a reading").click();
      await yard.field(`Minutes of reading ${place + 1}`).fill(minutes);
      await yard.field(`Water depth of reading ${place + 1}`).fill(water);
    }
    await button(page, "Write to the sheet").click();
    await yard.said("Hole B was added to Hole tests.");
    const rates = async () =>
      (await recordsOf(page, holeTestsSheet, SITE_ID)).map(({ record }) => Number(record.infiltrationRate).toFixed(6));
    await expect.poll(rates).toEqual([byHand.rateA.toFixed(6), byHand.rateB.toFixed(6)]);
    await yard.designs("testedRate", byHand.testedRate);
    await yard.designs("designRate", byHand.designRate);

    await openTab(page, "Visits");
    await pickStage(page, "Test visit");
    await tabTo(page, /Gritty/);
    await answerStep(page, "Soil by feel", "2");
    await answerStep(page, "Signs of water", "Space");
    await answerStep(page, "Empty in a day", "Space");
    expect(await pane(page).locator(".stage-picker summary").innerText()).toContain("Done");
  });

  it("has its basin tuned by keyboard, written, undone and written again, and Design comes to the numbers worked out by hand", async () => {
    const { page } = yard;
    await turnCalendarTo(page, "2027-03-15");
    await openTab(page, "Basin");
    await tabTo(page, "Storm depth");
    for (const key of ["1.2", "Tab", "5", "Tab", "6", "Tab", "4", "Tab", "1.5", "Tab", "Enter"]) await strike(page, key);
    await tabTo(page, "Shape");
    for (const key of ["R", "Tab", "tight"]) await strike(page, key);
    await expect.poll(() => pane(page).locator(".headline strong").innerText()).toBe("130.5 sq ft");
    // 5 in at 0.2655 in/h.
    expect(byHand.pondingGoneHours.toFixed(1)).toBe("18.8");
    expect(await pane(page).locator(".headline").innerText()).toContain("ponding gone in 18.8 h");
    await page.keyboard.press("Enter");
    await yard.said("The basin of Y-017 was written to Sites.");
    await yard.designs("floorArea", byHand.floorArea);

    await button(page, "Undo: The basin of Y-017 was written to Sites.").click();
    await yard.said("Undone: The basin of Y-017 was written to Sites.");
    // The storm of Program again: 0.95 x 700 sq ft x 1 in / 12.
    await yard.designs("runoff", 55.4166667);
    await button(page, "Undo: Undone: The basin of Y-017 was written to Sites.").click();
    await yard.said("Undone: Undone: The basin of Y-017 was written to Sites.");

    await yard.designs("runoff", byHand.runoff);
    await yard.designs("floorArea", byHand.floorArea);
    await yard.designs("rimArea", byHand.rimArea);
    await yard.designs("waterHeld", byHand.waterHeld);
    await yard.designs("drawdownHours", byHand.drawdownHours);
    await yard.designs("digVolume", byHand.digVolume);
    await yard.designs("looseVolume", byHand.looseVolume);
    await yard.designs("mixSand", byHand.sand);
    await yard.designs("mixTopsoil", byHand.topsoil);
    await yard.designs("mixCompost", byHand.compost);
    await yard.designs("mulchVolume", byHand.mulch);
    await yard.designs("plants", byHand.plants);
    await expect.poll(() => value(page, address(designSheet, PLACE, "status"))).toBe("fits");
    await openTab(page, "Yard");
    const shown = await pane(page).locator(".results .result").allInnerTexts();
    const results = shown.map((result) => result.replaceAll(/\s+/g, " ").trim());
    expect(results).toEqual(
      expect.arrayContaining([
        "Contributing area 700 sq ft",
        "Tested rate (2 holes) 0.53 in/h",
        "Floor area 130.5 sq ft",
        "Rim area 219.4 sq ft",
        "Water held 88.44 cu ft",
        "Drawdown 24.5 h",
        "Dig, in place 7.31 cu yd",
        "Dig, loose 9.13 cu yd",
        "Mix: sand, loose 1.48 cu yd",
        "Mulch 2.03 cu yd",
        "Plants by spacing 113",
      ]),
    );
  });

  it("has its design checked by a second person, because nobody checks their own", async () => {
    const { page } = yard;
    await openTab(page, "Visits");
    await pickStage(page, "Owner's agreement");
    expect(await yard.gate().innerText()).toContain(
      "No second person has checked the design. Say under Design who made it, who checked it and what came out.",
    );
    await pickStage(page, "Design");
    expect(await yard.gate().count()).toBe(0);
    await tabTo(page, "Name or date of this version of the design");
    await answerStep(page, "Version", "1 of 15 March");
    await answerStep(page, "Designed by", "Ivo Reed");
    await answerStep(page, "Checked by", "ivo reed");
    await answerStep(page, "Result of the check", "Space");
    await pickStage(page, "Owner's agreement");
    expect(await yard.gate().innerText()).toContain("Ivo Reed made the design and checked it too. Let another person check it.");
    await pickStage(page, "Design");
    await (await yard.openCard("Checked by")).getByLabel("Who checked it: another person").fill("Mina Tarr");
    await page.keyboard.press("Enter");
    await yard.said("Checked by: written to Visits.");
    await pickStage(page, "Owner's agreement");
    expect(await yard.gate().count()).toBe(0);
  });

  it("has an estimate drafted from prices typed into the cells, and hands it on as a file with the same total", async () => {
    const { page } = yard;
    await turnCalendarTo(page, "2027-03-18");
    const items = startingPrices.map(([item]) => String(item));
    for (const [column, typed] of Object.entries(PRICE_LIST)) {
      const texts = new Map<string, string>(Object.entries(typed));
      await typeDown(
        page,
        address(pricesSheet, 0, column as keyof typeof PRICE_LIST),
        items.map((item) => texts.get(item) ?? ""),
      );
    }
    await typeDown(
      page,
      address(pricesSheet, 0, "priceDate"),
      items.map(() => "2027-03-18"),
    );
    // Of the six forms of cost share, percent and cap: 60 % of the cost and no more than 500.
    await typeDown(page, addressOf(settingCell("costSharePerSquareFoot")), ["", "", "60", "", "500", ""]);
    await openYard(page, PLACE, "Estimate");
    await button(page, "Add these 9 lines").click();
    await yard.said("9 lines were added to the estimate of Y-017.");
    const amounts = async () =>
      Object.fromEntries(
        (await recordsOf(page, estimateLinesSheet, SITE_ID)).map(({ record }) => [record.item, Number(record.amount).toFixed(2)]),
      );
    const expected = Object.entries({ ...byHand.estimate, "volunteer hour": byHand.inKind }).map(([item, amount]) => [
      item,
      amount.toFixed(2),
    ]);
    await expect.poll(amounts).toEqual(Object.fromEntries(expected));
    await expect.poll(() => yard.total("Cost")).toBe("1,023.42");
    expect([
      byHand.cost.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
      await yard.total("Cash lines"),
      await yard.total("Contingency"),
      await yard.total("In-kind value"),
    ]).toEqual(["1,023.42", "889.93", "133.49", "619.78"]);
    // 60 % of 1,023.42 is 614.05, so the cap stands; 1,023.42 - 500.
    expect([await yard.total("Cost share"), await yard.total("Left to pay")]).toEqual(["500.00", "523.42"]);
    expect([await yard.total("Cost for each sq ft treated"), await yard.total("Cost for each gal held")]).toEqual([
      byHand.costPerSquareFoot.toFixed(2),
      byHand.costPerGallon.toFixed(2),
    ]);

    const downloading = page.waitForEvent("download");
    await button(page, "Estimate, spreadsheet").click();
    const download = await downloading;
    expect(download.suggestedFilename()).toBe("estimate-Y-017-2027-03-18.xlsx");
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load((await savedBytes(download)).buffer as ArrayBuffer);
    let inFile = Number.NaN;
    workbook.getWorksheet(SITE_ID)?.eachRow((row) => {
      if (row.getCell(1).text === "Cost") inFile = row.getCell(8).result as number;
    });
    expect(inFile).toBeCloseTo(byHand.cost, 6);
  });

  it("is not dug without the owner's signature", async () => {
    const { page } = yard;
    await yard.nextDay("2027-03-22", "Before the dig");
    expect(await yard.gate().innerText()).toContain(
      "The owner has not signed, or it is not on record who signed and when. Nobody digs on another's land without it.",
    );
    await pickStage(page, "Owner's agreement");
    await tabTo(page, /All of it/);
    await answerStep(page, "What it covers", "Space");
    await answerStep(page, "Signed on", dayKeys("2027-03-22"));
    await answerStep(page, "Signed by", "Lena Holt");
    await answerStep(page, "In force until", dayKeys("2032-03-22"));
    await answerStep(page, "Signed copy", "Binder 3, sheet 17");
    await answerStep(page, "Permit", "Space");
    await answerStep(page, "Money", "Space");
    await pickStage(page, "Before the dig");
    expect(await yard.gate().count()).toBe(0);
  });

  it("is planned for a day on which the ticket is still in force", async () => {
    const { page } = yard;
    await yard.nextDay("2027-04-12", "Before the dig");
    await tabTo(page, "Day on which you will dig");
    await answerStep(page, "Day of the dig", dayKeys("2027-04-24"));
    await pickStage(page, "Dig day");
    expect(await yard.gate().locator(".gate-verdict").innerText()).toBe("Do not dig.");
    expect(await yard.gate().innerText()).toContain(
      "The ticket was in force until 2027-04-21, not on 2027-04-24. Ask for a new one and write its number down.",
    );
    expect(await yard.gate().innerText()).toContain(
      "Before the dig, not answered yet: Who digs, Deliveries, Tools, People coming, Rain, Heat, State of the ground.",
    );
    await pickStage(page, "Before the dig");
    await (await yard.openCard("Day of the dig")).getByLabel("Day on which you will dig").fill("2027-04-17");
    await button(page, "Write the answer: Day of the dig").click();
    await yard.said("Day of the dig: written to Visits.");
    await answerStep(page, "Who digs", "Space");
    await answerStep(page, "Deliveries", "Space");
    await answerStep(page, "Tools", "Space");
    await answerStep(page, "People coming", "4");
    await answerStep(page, "Rain", "Space");
    await answerStep(page, "Heat", "Space");
    await answerStep(page, "State of the ground", "Space");
    await pickStage(page, "Dig day");
    expect(await yard.gate().count()).toBe(0);
  });

  walkFromTheDigOn(yard);

  it("caused no error on the page", () => {
    expect(yard.faults).toEqual([]);
  });
});
