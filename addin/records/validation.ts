/**
 * zod as every record uses it: without functions built from text, which the content security policy forbids.
 * The setting must be made before the first schema is, so schemas are built from this import alone.
 */
import * as z from "zod";

z.config({ jitless: true });

export { z };
