/**
 * Initial abstraction in inches by curve number.
 *
 * Source  TR-55, 2nd ed., 1986, table 4-1 (read in transcription), printed to 0.001 in. Seven of its rows.
 */
export const tr55Table41 = [
  { cn: 40, initialAbstraction: 3.0 },
  { cn: 61, initialAbstraction: 1.279 },
  { cn: 70, initialAbstraction: 0.857 },
  { cn: 75, initialAbstraction: 0.667 },
  { cn: 80, initialAbstraction: 0.5 },
  { cn: 90, initialAbstraction: 0.222 },
  { cn: 98, initialAbstraction: 0.041 },
] as const;
