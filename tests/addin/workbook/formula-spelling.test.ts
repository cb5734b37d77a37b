import { describe, expect, test } from "vitest";
import { designFormulas } from "../../../addin/records/design-formulas.ts";
import { placesAsSetUp } from "../../../addin/records/program.ts";
import { inFileSpelling } from "../../../addin/workbook/file/formula-spelling.ts";

/** Microsoft's [MS-XLSX], 2.2.3 (read): _xlfn and _xlfn._xlws. Those of names and of an add-in's functions: from memory. */
describe("A formula in a file", () => {
  test.each([
    ["=1+SUM(A1:A3)", "1+SUM(A1:A3)"],
    ["=SOAK.DRAWDOWN(A1,0.5)", "_xldudf_SOAK_DRAWDOWN(A1,0.5)"],
    ["=soak.drawdown(6,1)", "_xldudf_SOAK_DRAWDOWN(6,1)"],
    ["=IFNA(A1,0)+MAXIFS(B:B,C:C,1)", "_xlfn.IFNA(A1,0)+_xlfn.MAXIFS(B:B,C:C,1)"],
    ["=FILTER(A1:A3,B1:B3)", "_xlfn._xlws.FILTER(A1:A3,B1:B3)"],
    ["=LET(u,A1,k,u*2,IF(u=k,k,u))", "_xlfn.LET(_xlpm.u,A1,_xlpm.k,_xlpm.u*2,IF(_xlpm.u=_xlpm.k,_xlpm.k,_xlpm.u))"],
    ["=LET(a, LET(b,1,b+1), a)", "_xlfn.LET(_xlpm.a, _xlfn.LET(_xlpm.b,1,_xlpm.b+1), _xlpm.a)"],
    ["=LET(t,A1,SOAK.BASINSIZE(t))", "_xlfn.LET(_xlpm.t,A1,_xldudf_SOAK_BASINSIZE(_xlpm.t))"],
  ])("%s stands there as %s", (formula, spelled) => {
    expect(inFileSpelling(formula)).toBe(spelled);
  });

  test("keeps texts and the names of sheets as they are", () => {
    expect(inFileSpelling(`=LET(u,"u, LET(SOAK.X(",'Let (u)'!A1&"say ""u"""&u)`)).toBe(
      `_xlfn.LET(_xlpm.u,"u, LET(SOAK.X(",'Let (u)'!A1&"say ""u"""&_xlpm.u)`,
    );
  });

  test("takes every name that Design gives for a name, and no function of ours stays in our own spelling", () => {
    for (const { formulas } of designFormulas(placesAsSetUp)) {
      const spelled = inFileSpelling(formulas[0]?.[0] ?? "");
      expect(spelled).not.toMatch(/SOAK\.|(?<![.\w])(LET|IFNA)\(/);
      expect(spelled.match(/_xlfn\.LET\(/g)?.length ?? 0).toBe(formulas[0]?.[0]?.match(/LET\(/g)?.length ?? 0);
    }
  });
});
