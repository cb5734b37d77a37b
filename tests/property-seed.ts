import fc from "fast-check";

/**
 * Properties try the same cases in every run, so that a run that fails points at a change and not at chance.
 * SEED=7 npm test tries others; what one finds is pinned as an example of its property.
 */
fc.configureGlobal({ seed: Number(process.env["SEED"] ?? 20_261_125) });
