/**
 * What rain can be and what is a slip of units.
 *
 * Source  The most rain measured in an hour and in a day anywhere, 305 mm and 1,825 mm: World Meteorological Organization
 *         (from memory). The rest: common practice, no source.
 * Limits  A storm within these bounds may still be the wrong one for a place.
 */
export const MOST_MEASURED_INCHES = { hour: 12.01, day: 71.85 } as const;

/** Towns get between about 4 in (100 mm) and 120 in (3,000 mm) of rain in a year. */
export const YEARLY_INCHES = { least: 4, most: 120 } as const;

/** No garden is designed for less than 0.15 in (3.8 mm), so 1 in typed as 1 mm shows; few places have a day of more than 12 in (305 mm). */
export const DESIGN_STORM_INCHES = { least: 0.15, most: 12 } as const;
