export const TAB_IDS = ["yard", "visits", "hole-test", "basin", "planting", "estimate"] as const;
export type TabId = (typeof TAB_IDS)[number];

export const PROGRAM_TAB_IDS = ["yards", "next", "what-if", "report", "rain", "workbook"] as const;
export type ProgramTabId = (typeof PROGRAM_TAB_IDS)[number];
