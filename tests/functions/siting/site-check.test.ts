import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { siteVerdict, type SiteRule } from "../../../functions/siting/site-check.ts";
import { measured } from "../measured.ts";

const rule: fc.Arbitrary<SiteRule> = fc.record({
  comparison: fc.constantFrom("at least", "at most"),
  limit: measured(0, 100),
  ifNotMet: fc.constantFrom("refer", "stop"),
});
const rules = fc.array(rule, { minLength: 1, maxLength: 4 });
const value = measured(0, 100);
const worse = ["pass", "refer", "stop"];

describe("published limits", () => {
  // Rain Garden Handbook for Western Washington, 2013, p. 13 (read).
  test.each([
    { what: "a foundation 9.5 ft away", value: 9.5, rule: { comparison: "at least", limit: 10, ifNotMet: "stop" }, verdict: "stop" },
    { what: "a slope of 11 percent", value: 11, rule: { comparison: "at most", limit: 10, ifNotMet: "refer" }, verdict: "refer" },
    {
      what: "a septic field 12 ft uphill of the garden",
      value: 12,
      rule: { comparison: "at least", limit: 10, ifNotMet: "stop" },
      verdict: "pass",
    },
    // Ontario planning and design guide, wiki (read): 4 m to a building; under 15 mm/h loosen and underdrain.
    {
      what: "a foundation 3.9 m away in Ontario",
      value: 3.9,
      rule: { comparison: "at least", limit: 4, ifNotMet: "stop" },
      verdict: "stop",
    },
    { what: "soil of 12 mm/h in Ontario", value: 12, rule: { comparison: "at least", limit: 15, ifNotMet: "refer" }, verdict: "refer" },
    // Wisconsin homeowner manual GWQ037 (read): a hole 6 in deep empties in 24 h.
    { what: "a 6 in hole that empties in 20 h", value: 20, rule: { comparison: "at most", limit: 24, ifNotMet: "stop" }, verdict: "pass" },
    {
      what: "the 0.30 in/h of that hole",
      value: 6 / 20,
      rule: { comparison: "at least", limit: 0.25, ifNotMet: "refer" },
      verdict: "pass",
    },
    // Minnesota Stormwater Manual (read): 3 ft to water. 40 in below the lawn less 8 in of basin and 12 in loosened is 20 in.
    {
      what: "water 20 in below the dig",
      value: 40 - 8 - 12,
      rule: { comparison: "at least", limit: 36, ifNotMet: "stop" },
      verdict: "stop",
    },
  ] as const)("$what: $verdict", ({ value: measuredValue, rule: only, verdict }) => {
    expect(siteVerdict(measuredValue, [only])).toBe(verdict);
  });

  test("two steps of one rule: a slope of 10 passes, 11 is referred, 13 stops", () => {
    const slope: SiteRule[] = [
      { comparison: "at most", limit: 12, ifNotMet: "stop" },
      { comparison: "at most", limit: 10, ifNotMet: "refer" },
    ];
    expect([10, 11, 13].map((percent) => siteVerdict(percent, slope))).toEqual(["pass", "refer", "stop"]);
    expect([10, 11, 13].map((percent) => siteVerdict(percent, [...slope].reverse()))).toEqual(["pass", "refer", "stop"]);
  });
});

describe("any rules", () => {
  test("are passed on the limit itself, in feet and in metres alike", () => {
    fc.assert(
      fc.property(rule, (one) => {
        expect(siteVerdict(one.limit, [one])).toBe("pass");
        expect(siteVerdict((one.limit * 0.3048) / 0.3048, [one])).toBe("pass");
      }),
    );
  });

  test("are broken by a thousandth beyond the limit", () => {
    fc.assert(
      fc.property(rule, (one) => {
        const beyond = one.limit + (one.comparison === "at least" ? -0.001 : 0.001);
        expect(siteVerdict(beyond, [one])).toBe(one.ifNotMet);
      }),
    );
  });

  test("give the worst of their verdicts one by one, in any order", () => {
    fc.assert(
      fc.property(value, rules, (measuredValue, several) => {
        const each = several.map((one) => worse.indexOf(siteVerdict(measuredValue, [one])));
        expect(siteVerdict(measuredValue, several)).toBe(worse[Math.max(...each)]);
        expect(siteVerdict(measuredValue, [...several].reverse())).toBe(worse[Math.max(...each)]);
      }),
    );
  });

  test("are judged no better when one more is added", () => {
    fc.assert(
      fc.property(value, rules, rule, (measuredValue, several, more) => {
        const before = worse.indexOf(siteVerdict(measuredValue, several));
        expect(worse.indexOf(siteVerdict(measuredValue, [...several, more]))).toBeGreaterThanOrEqual(before);
      }),
    );
  });
});
