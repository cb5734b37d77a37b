import { beforeAll, describe, expect, test } from "vitest";
import { exportFile, type ExportName } from "../../../../addin/actions/export/export-files.ts";
import { printedPage } from "../../../../addin/actions/export/printed-page.ts";
import type { Program } from "../../../../addin/actions/program/read-program.ts";
import { appendRows } from "../../../../addin/actions/program/write-records.ts";
import { asBuiltSheet } from "../../../../addin/records/as-built.ts";
import { EstimateWorkbook, TODAY } from "../../estimate-workbook.ts";
import { HOSTILE, LONG } from "./hostile-text.ts";

let program: Program;

beforeAll(async () => {
  const book = await EstimateWorkbook.start();
  await book.price({ item: "compost", unitPrice: 4242.5, delivery: 61, priceDate: TODAY - 10 });
  const [us, metric] = [await book.yard("Lantern House"), await book.yard("Kiln House", "metric")];
  await book.lines(us, [{ item: "compost", quantity: 3, unit: "cu yd", note: "Quoted at 4242.50 by phone" }]);
  await book.lines(metric, [{ item: "compost", quantity: 2, unit: "cu yd" }]);
  await appendRows(book.workbook, asBuiltSheet, [
    { siteId: metric, date: TODAY - 5, floorLength: 4.2, floorWidth: 2.1, pondingDepth: 140, drainHours: 9 },
  ]);
  program = await book.program();
});

async function page(name: ExportName, yards = program.yards): Promise<string> {
  const { content } = await exportFile(name, program, yards, TODAY);
  // As a reader sees it: no tags, no style, and the escapes read.
  return String(content)
    .replace(/<style>[^]*?<\/style>|<[^>]+>/g, " ")
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/\s+/g, " ");
}

test("a printed estimate shows every line, its delivery and the sums of it", async () => {
  // By hand: 3 x 4,242.50 + 61 = 12,788.50; 15 percent is 1,918.275; 14,706.775 together.
  const shown = await page("estimate.html", program.yards.slice(0, 1));
  for (const words of [
    "Estimate Y-001, Lantern House",
    "3 cu yd",
    "4,242.50",
    "61.00",
    "12,788.50",
    "Contingency, 15 % 1,918.2",
    "14,706.7",
    "Price date",
  ])
    expect(shown).toContain(words);
});

test("a contractor's list holds sizes and quantities, and no price of anybody", async () => {
  const shown = await page("quantities.html");
  expect(shown).toContain("compost 3 cu yd");
  expect(shown).toContain("Floor, length × width");
  expect(shown).not.toMatch(/4,?242|12,?788|61\.00/);
  expect(shown).toContain("Before any digging, a test hole included, ask the one-call center (811 in the US) and wait for every answer.");
});

test("a homeowner reads the garden's size in the yard's own units, when it empties, how to water it and whom to call", async () => {
  const us = await page("handout.html", program.yards.slice(0, 1));
  for (const words of [
    "as designed",
    " in ",
    " gal",
    "48 hours",
    "ask the one-call center (811 in the US) to have the lines marked",
    "Keep small children away",
  ])
    expect(us).toContain(words);
  const metric = await page("handout.html", program.yards.slice(1));
  expect(metric).toContain("4.2 m × 2.1 m, as built");
  expect(metric).toContain("140 mm");
  expect(metric).toContain("empty again in about 9 hours");
  expect(metric).not.toContain(" gal,");
  expect(metric).toContain("ask the local one-call or utility-marking service to have the lines marked");
  expect(metric).not.toMatch(/811|911/);
});

test("each yard has a page of its own, and each page says to confirm with local staff", async () => {
  for (const name of ["estimate.html", "quantities.html", "handout.html"] as const) {
    const content = String((await exportFile(name, program, program.yards, TODAY)).content);
    expect(content.match(/<article>/g)).toHaveLength(2);
    expect(content.match(/Confirm with local building, health and stormwater staff/g)).toHaveLength(2);
    expect(content).toContain("break-before: page");
  }
});

describe("Hostile text on a printed page", () => {
  const texts = [...HOSTILE, ...LONG];
  const markup = printedPage("</title><script>alert(1)</script>", [
    {
      title: texts.join(" "),
      subtitle: texts.join(" "),
      blocks: [
        { paragraph: texts.join(" ") },
        { list: texts },
        { facts: texts.map((text) => [text, text] as const) },
        { blanks: texts },
        { heading: texts.join(" ") },
        {
          table: {
            caption: texts.join(" "),
            columns: [{ heading: '"><img onerror=1>', isNumber: true }],
            rows: texts.map((text) => [text]),
            totals: 0,
          },
        },
      ],
    },
  ]);

  test("makes no tag, no attribute and nothing that runs", () => {
    const tags = new Set([...markup.matchAll(/<\/?([a-z0-9]+)/gi)].map(([, tag]) => tag?.toLowerCase()));
    expect([...tags].sort()).toEqual([
      "article",
      "bdi",
      "body",
      "caption",
      "dd",
      "div",
      "dl",
      "dt",
      "h1",
      "h2",
      "head",
      "html",
      "li",
      "meta",
      "p",
      "style",
      "table",
      "tbody",
      "td",
      "th",
      "thead",
      "title",
      "tr",
      "ul",
    ]);
    expect(markup).not.toMatch(/<[^>]*\son\w+=/i);
    expect(markup).toContain("default-src 'none'");
  });

  test("keeps its writing direction to itself", () => {
    expect(markup).toContain("<bdi>\u202eright to left</bdi>");
  });
});
