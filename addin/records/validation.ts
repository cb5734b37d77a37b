import * as z from "zod";

/**
 * zod builds no functions from text, which the content security policy forbids. The setting must be made before the
 * first schema is, so every file that makes one imports this file first. It hands nothing on: a namespace that is
 * exported again would be bundled whole.
 */
z.config({ jitless: true });
