/** A saved workbook is shown with the answers that were saved with it, and computed behind them. */
import { beforeAll, describe, expect, test, vi } from "vitest";
import { designSheet } from "../../../../../addin/records/design.ts";
import { recordSheets } from "../../../../../addin/records/program-sheets.ts";
import { cellOf, firstRow } from "../../../../../addin/records/place.ts";
import { surfacesSheet } from "../../../../../addin/records/surfaces.ts";
import { writeManyYards } from "../../../../many-yards.ts";
import { freshModule } from "./grid-on-node.ts";
import type { GridOnNode } from "./entry.ts";

const YARDS = 5;
const names = recordSheets.map(({ name }) => name);
const firstArea = cellOf(surfacesSheet, firstRow(surfacesSheet), "area");
const firstContributing = cellOf(designSheet, firstRow(designSheet), "contributingArea");

let computed: GridOnNode;
let text: string;

beforeAll(async () => {
  const module = freshModule("grid");
  computed = module.startGrid();
  await computed.open((draft) => writeManyYards(draft, YARDS));
  text = module.writeWorkbookFile(module.withAnswers(computed.grid.snapshot(), computed.grid.answers("0.9.0")), new Date());
});

/** Opened, with the number of calculations that were carried out since. */
function opened(file: string) {
  const module = freshModule("grid");
  const on = module.startGrid();
  const saved = module.readWorkbookFile("kept", file);
  const answers = module.answersIn(saved);
  on.grid.open(saved, answers);
  const execute = vi.spyOn(on.grid.injector.get(module.ICalculateFormulaService), "execute");
  return { on, answers, calculations: () => execute.mock.calls.length };
}

/** Longer than the grid waits for further changes before it computes: whatever would be computed has begun. */
const settled = () => new Promise((resolve) => setTimeout(resolve, 500));

describe("A saved workbook", () => {
  test("shows every answer that it was saved with before anything is computed, and by which version", async () => {
    const { on, answers, calculations } = opened(text);
    await settled();
    expect(calculations()).toBe(0);
    expect(answers?.version).toBe("0.9.0");
    expect(await on.workbook.readSheets(names)).toEqual(await computed.workbook.readSheets(names));
  });

  test("shows the same when it has been computed, once", async () => {
    const { on, calculations } = opened(text);
    on.grid.computeAnew();
    await on.workbook.calculated();
    await settled();
    expect(calculations()).toBe(1);
    expect(await on.workbook.readSheets(names)).toEqual(await computed.workbook.readSheets(names));
  });

  test("whose answers are not those to what is typed in it shows the right ones when it has been computed", async () => {
    const [[[typed]]] = (await computed.workbook.read([firstArea])) as [[[number]]];
    const [[[contributing]]] = (await computed.workbook.read([firstContributing])) as [[[number]]];
    const file = JSON.parse(text) as {
      workbook: { sheets: Record<string, { name: string; cellData: Record<number, Record<number, { v: unknown }>> }> };
    };
    const surfaces = Object.values(file.workbook.sheets).find(({ name }) => name === surfacesSheet.name);
    surfaces!.cellData[firstArea.row]![firstArea.column]!.v = typed + 100;
    const { on } = opened(JSON.stringify(file));
    expect(await on.workbook.read([firstContributing])).toEqual([[[contributing]]]);
    on.grid.computeAnew();
    await on.workbook.calculated();
    expect(await on.workbook.read([firstContributing])).toEqual([[[contributing + 100]]]);
  });

  test("that is changed before it has been computed shows the answers to the change", async () => {
    const { on } = opened(text);
    const [[[contributing]]] = (await computed.workbook.read([firstContributing])) as [[[number]]];
    const [[[typed]]] = (await computed.workbook.read([firstArea])) as [[[number]]];
    await on.workbook.writeValues([{ range: firstArea, values: [[typed + 50]] }]);
    on.grid.computeAnew();
    await on.workbook.calculated();
    expect(await on.workbook.read([firstContributing])).toEqual([[[contributing + 50]]]);
  });

  test.each([
    ["none", (data: string) => data.replace("SOAKBOOK_ANSWERS", "ANOTHER'S")],
    ["damaged ones", (data: string) => data.replace(/\\"version\\":\\"0\.9\.0\\"/, '\\"version\\":7')],
  ])("with %s is computed at once", async (_, damage) => {
    const { on, answers } = opened(damage(text));
    expect(answers).toBeNull();
    await on.workbook.calculated();
    expect(await on.workbook.readSheets(names)).toEqual(await computed.workbook.readSheets(names));
  });
});
