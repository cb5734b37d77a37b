import { hasGnuParallel, HOW_TO_INSTALL, installGnuParallel } from "./gnu-parallel.ts";

/** Before the tests of the batch: GNU parallel is there, or is brought, or one line says what to install. */
if (!hasGnuParallel() && !(installGnuParallel() && hasGnuParallel())) {
  console.error(HOW_TO_INSTALL);
  process.exitCode = 1;
}
