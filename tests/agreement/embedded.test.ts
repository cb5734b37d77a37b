import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PageHost } from "../browser/page.ts";
import type { OpenPage } from "../browser/page.ts";
import { cases } from "./cases.ts";

const START_MILLISECONDS = 90_000;

describe("The port on the embedded spreadsheet", () => {
  let host: PageHost;
  let opened: OpenPage;

  beforeAll(async () => {
    host = await PageHost.start();
    opened = await host.newPage();
    await opened.page.goto(`${opened.address}agreement.html`);
    await opened.page.waitForFunction(() => window.runAgreementCase !== undefined);
  }, START_MILLISECONDS);

  afterAll(async () => {
    await host.close();
  });

  it.each(cases.map(({ title }) => title))("%s", async (title) => {
    const failure = await opened.page.evaluate((one) => window.runAgreementCase?.(one), title);
    expect(failure).toBeNull();
  });

  it("a cell's sentence moves with its formula when a row is inserted above", async () => {
    const sentences = await opened.page.evaluate(() => window.sentenceAroundInsertedRow?.());
    const curveNumber = expect.stringContaining("Curve number must be") as string;
    expect(sentences).toEqual([curveNumber, null, curveNumber]);
  });

  it("a picture is a change to keep, is in the saved file, and is there when the file is opened again", async () => {
    expect(await opened.page.evaluate(() => window.pictureKept?.())).toEqual({ isChange: true, names: ["Y-001"] });
  });

  it("throws nothing that no part of the page caught", () => {
    expect(opened.faults).toEqual([]);
  });
});
