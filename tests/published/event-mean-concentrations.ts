/**
 * Event mean concentrations of urban runoff in mg/L that other documents print (read where stormwater pages reprint them,
 * digits of footnotes taken off).
 */
export const otherConcentrations = [
  { from: "Smullen and Cave 1998, median of all urban", TSS: 55, TP: 0.26 },
  { from: "Schueler 1987, mean of residential", TSS: 100, TP: 0.26 },
  { from: "Gibb and others 1991, mean of residential", TSS: 150, TP: 0.33 },
  { from: "US EPA 1983, national program, median of residential", TSS: 101, TP: 0.38 },
  { from: "US EPA 1983, national program, median of commercial", TSS: 69, TP: 0.201 },
  { from: "Barrett and Malina 1998, roadway", TSS: 173, TP: 0.4 },
] as const;
