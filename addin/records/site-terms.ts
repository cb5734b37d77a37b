/** Keys that several sheets share. */
export const UNIT_SYSTEMS = ["us", "metric"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

export const SOIL_GROUPS = ["A", "B", "C", "D"] as const;

export const TENURES = ["owner", "renter"] as const;
