/**
 * Every word of the pane, ready for translation. The hole test's words are in hole-test/text.ts and the basin's in
 * basin/text.ts, each one object like this; a view writes no words of its own.
 */
export const text = {
  verdicts: { pass: "Pass", refer: "Refer", stop: "Stop", "not measured": "Not measured" },
} as const;
