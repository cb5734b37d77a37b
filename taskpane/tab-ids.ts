export const TAB_IDS = ["yard", "screening", "hole-test", "basin"] as const;
export type TabId = (typeof TAB_IDS)[number];
