import { describe, expect, test } from "vitest";
import { BLANK_SIGN_IN, readSignIn, timeOfDay, timeWords } from "../../../../taskpane/views/build/sign-in-draft.ts";

const read = (typed: Partial<typeof BLANK_SIGN_IN>) => readSignIn({ ...BLANK_SIGN_IN, ...typed });

describe("volunteers as typed", () => {
  test("several names with commas are several people with the same hours", () => {
    expect(read({ names: "Wren Alder, Ash Pell,, Tam Roe", hours: "3.5" })).toEqual({
      people: [
        { who: "Wren Alder", arrived: null, left: null, hours: 3.5 },
        { who: "Ash Pell", arrived: null, left: null, hours: 3.5 },
        { who: "Tam Roe", arrived: null, left: null, hours: 3.5 },
      ],
    });
  });

  test("from 9:00 to 12:30 is three and a half hours", () => {
    expect(read({ names: "Ash", arrived: "09:00", left: "12:30" })).toEqual({
      people: [{ who: "Ash", arrived: 0.375, left: 750 / 1440, hours: 3.5 }],
    });
  });

  test("who has come and not left has no hours yet, and not none", () => {
    expect(read({ names: "Ash", arrived: "09:00" })).toEqual({ people: [{ who: "Ash", arrived: 0.375, left: null, hours: null }] });
    expect(read({ names: "Ash" })).toEqual({ people: [{ who: "Ash", arrived: null, left: null, hours: null }] });
  });

  test.each([
    [{ hours: "3" }, { names: "Who is missing." }],
    [{ names: " , ", hours: "3" }, { names: "Who is missing." }],
    [{ names: "Ash", arrived: "09:00", left: "12:30", hours: "3" }, { times: "Give the times or the hours, not both." }],
    [{ names: "Ash", left: "12:30" }, { times: "In is missing. Give both times, or the hours." }],
    [{ names: "Ash", arrived: "12:30", left: "12:30" }, { times: "Out must be after in." }],
    [{ names: "Ash", arrived: "13:00", left: "12:30" }, { times: "Out must be after in." }],
    [{ names: "Ash", hours: "3 h" }, { hours: 'Hours must be a number alone, in the unit shown; it is "3 h".' }],
    [{ names: "Ash", hours: "0" }, { hours: "Hours must be more than 0." }],
    [{ names: "Ash", hours: "24.5" }, { hours: "Hours must be 24 or less." }],
  ])("%j is refused in words", (typed, faults) => {
    expect(read(typed)).toEqual({ faults });
  });

  test("midnight is a time, 24:00 and words are none", () => {
    expect([timeOfDay("00:00"), timeOfDay("23:59"), timeOfDay("24:00"), timeOfDay("9"), timeOfDay("")]).toEqual([
      0,
      1439 / 1440,
      null,
      null,
      null,
    ]);
    expect([timeWords(0.375), timeWords(750 / 1440), timeWords(0)]).toEqual(["9:00", "12:30", "0:00"]);
  });
});
