import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  areaElsewhere,
  checkDownspout,
  LININGS,
  ROOF_PEAK_COEFFICIENT,
  TRENCH_REMINDERS,
  USUAL_SIZES,
  type DownspoutInputs,
} from "../../../../addin/actions/yard/check-downspout.ts";
import type { SurfaceRow } from "../../../../addin/records/surfaces.ts";
import { measured } from "../../../functions/measured.ts";

const inputs: DownspoutInputs = {
  conduit: "pipe",
  units: "us",
  roofArea: 1000,
  intensity: 6,
  coefficient: null,
  width: 4,
  slopePercent: 1,
  roughness: 0.01,
};

function valueOf(answer: ReturnType<typeof checkDownspout>["peak"]): number {
  if ("sentence" in answer) throw new Error(answer.sentence);
  return answer.value;
}

// Rational method, by hand: 0.95 x 6 in/h x 1,000 sq ft / 43,200 = 0.1319 cfs, which is 59.2 gallons a minute.
// Manning, by hand, in gallons a minute on 1 percent (448.83 to the cfs): 3 in smooth 51.6, 4 in smooth 111.0, 3 in of n 0.015 34.4,
// 4 in of n 0.015 74.0, 6 in of n 0.012 272.8.
describe("a downspout's pipe", () => {
  test("of 4 in smooth plastic on 1 percent carries 1,000 sq ft of roof under 6 in/h", () => {
    const check = checkDownspout(inputs);
    expect(valueOf(check.peak)).toBeCloseTo(0.1319, 4);
    expect(valueOf(check.capacity) * 448.83).toBeCloseTo(111, 1);
    expect(check).toMatchObject({ carries: true, sizeThatWould: null });
  });

  test("of 3 in is too small for it, and the next usual size, 4 in, would do", () => {
    const check = checkDownspout({ ...inputs, width: 3 });
    expect(valueOf(check.capacity) * 448.83).toBeCloseTo(51.6, 1);
    expect(check).toMatchObject({ carries: false, sizeThatWould: 4 });
  });

  test("of 4 in with n of 0.015 is too small for 1,500 sq ft, 88.8 gallons a minute, and 6 in would do", () => {
    const check = checkDownspout({ ...inputs, roofArea: 1500, roughness: 0.015 });
    expect(valueOf(check.peak) * 448.83).toBeCloseTo(88.8, 1);
    expect(valueOf(check.capacity) * 448.83).toBeCloseTo(74, 1);
    expect(check).toMatchObject({ carries: false, sizeThatWould: 6 });
  });

  test("beyond 8 in no usual size is named", () => {
    const check = checkDownspout({ ...inputs, roofArea: 40_000 });
    expect(check).toMatchObject({ carries: false, sizeThatWould: null });
  });

  test("in metric units gives the same answer", () => {
    const metric = checkDownspout({ ...inputs, units: "metric", roofArea: 1000 * 0.09290304, intensity: 6 * 25.4, width: 3 * 25.4 });
    const us = checkDownspout({ ...inputs, width: 3 });
    expect(valueOf(metric.peak)).toBeCloseTo(valueOf(us.peak) * 28.316846592, 9);
    expect(valueOf(metric.capacity)).toBeCloseTo(valueOf(us.capacity) * 28.316846592, 9);
    expect(metric).toMatchObject({ carries: false, sizeThatWould: 100 });
  });

  test("that is level carries nothing, and no size would", () => {
    expect(checkDownspout({ ...inputs, slopePercent: 0 })).toMatchObject({ carries: false, sizeThatWould: null, capacity: { value: 0 } });
  });

  test("on 0.5 percent, or a trench, is asked whether a percent was meant", () => {
    for (const conduit of ["pipe", "trench"] as const) {
      expect(checkDownspout({ ...inputs, conduit, slopePercent: 0.5 }).cautions.join(" ")).toContain("taken as 0.5%");
    }
  });
});

// Manning, by hand: half a circle 12 in across on 2 percent with n 0.05 carries 0.655 cfs; 8 in across (8/12)^(8/3) = 0.339 of that, 0.222.
describe("a downspout's trench", () => {
  test("half round, 12 in across, with grass, on 2 percent carries 0.655 cfs; its roughness is not a pipe's and is not cautioned", () => {
    const check = checkDownspout({ ...inputs, conduit: "trench", width: 12, slopePercent: 2, roughness: 0.05 });
    expect(valueOf(check.capacity)).toBeCloseTo(0.655, 3);
    expect(check).toMatchObject({ carries: true, cautions: [] });
  });

  test("of 6 in is too small for 1,000 sq ft under 6 in/h, and 8 in would do", () => {
    const check = checkDownspout({ ...inputs, conduit: "trench", width: 6, slopePercent: 2, roughness: 0.05 });
    expect(check).toMatchObject({ carries: false, sizeThatWould: 8 });
  });
});

describe("what is not known", () => {
  test.each([
    ["Rain intensity is missing.", "peak", { intensity: null }],
    ["Area is missing.", "peak", { roofArea: null }],
    ["Inside diameter is missing.", "capacity", { width: null }],
    ["Pipe slope is missing.", "capacity", { slopePercent: null }],
  ] as const)("says: %s", (sentence, which, missing) => {
    const check = checkDownspout({ ...inputs, ...missing });
    expect(check[which]).toEqual({ sentence });
    expect(check).toMatchObject({ carries: null, sizeThatWould: null });
  });
});

test("a size that is named carries the peak, and no smaller usual size does", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("pipe" as const, "trench" as const),
      fc.constantFrom("us" as const, "metric" as const),
      measured(10, 4000),
      measured(0.5, 10),
      measured(0.2, 8),
      (conduit, units, area, intensity, slopePercent) => {
        const asked = { ...inputs, conduit, units, roofArea: area, intensity, slopePercent, width: 1 };
        const { sizeThatWould, carries } = checkDownspout(asked);
        for (const size of USUAL_SIZES[conduit][units]) {
          const enough = checkDownspout({ ...asked, width: size }).carries;
          if (carries === false) expect(enough).toBe(sizeThatWould !== null && size >= sizeThatWould);
        }
      },
    ),
  );
});

describe("what is offered to begin with", () => {
  // ASCE and WPCF Manual 37 (read in transcription): roofs 0.75 to 0.95.
  test("a roof counts with the most that is printed for it, 0.95", () => {
    expect(ROOF_PEAK_COEFFICIENT).toBe(0.95);
  });

  // City of Winchester, Indiana, stormwater code, table 4 (read); a page that quotes tables of Manning's n (read): corrugated plastic 0.024.
  test("linings are as rough as printed", () => {
    expect(LININGS.pipe.map(({ roughness }) => roughness)).toEqual([0.01, 0.011, 0.024]);
    expect(LININGS.trench.map(({ name, roughness }) => [name, roughness])).toContainEqual(["swale with grass", 0.05]);
  });

  test("utilities, private lines and a shallow trench are called to mind", () => {
    expect(TRENCH_REMINDERS.map(({ id }) => id)).toEqual(["utilities", "private-lines", "trench"]);
  });

  test("half of 1,180 sq ft that drains here leaves 590 to reroute; a blank share leaves none", () => {
    const roof = (area: number | null, share: number | null) => areaElsewhere({ record: { area, share } } as SurfaceRow);
    expect([roof(1180, 0.5), roof(1180, null), roof(1180, 0), roof(null, 0.5)]).toEqual([590, 0, 1180, null]);
  });
});
