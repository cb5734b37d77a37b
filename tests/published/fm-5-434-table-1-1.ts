/**
 * What one volume of earth becomes in another state.
 *
 * Source  US Army, FM 5-434, 15 June 2000, table 1-1 (bank to loose, bank to compacted, loose to compacted: read in
 *         transcription; the cells to bank and to loose: from memory), printed to 0.01.
 */
export const fm5434Table11 = [
  { soil: "sand", from: "in place", to: "loose", factor: 1.11 },
  { soil: "sand", from: "in place", to: "compacted", factor: 0.95 },
  { soil: "sand", from: "loose", to: "in place", factor: 0.9 },
  { soil: "sand", from: "loose", to: "compacted", factor: 0.86 },
  { soil: "sand", from: "compacted", to: "in place", factor: 1.05 },
  { soil: "sand", from: "compacted", to: "loose", factor: 1.17 },
  { soil: "loam", from: "in place", to: "loose", factor: 1.25 },
  { soil: "loam", from: "in place", to: "compacted", factor: 0.9 },
  { soil: "loam", from: "loose", to: "in place", factor: 0.8 },
  { soil: "loam", from: "loose", to: "compacted", factor: 0.72 },
  { soil: "loam", from: "compacted", to: "in place", factor: 1.11 },
  { soil: "loam", from: "compacted", to: "loose", factor: 1.39 },
  { soil: "clay", from: "in place", to: "loose", factor: 1.43 },
  { soil: "clay", from: "in place", to: "compacted", factor: 0.9 },
  { soil: "clay", from: "loose", to: "in place", factor: 0.7 },
  { soil: "clay", from: "loose", to: "compacted", factor: 0.63 },
  { soil: "clay", from: "compacted", to: "in place", factor: 1.11 },
  { soil: "clay", from: "compacted", to: "loose", factor: 1.59 },
] as const;
