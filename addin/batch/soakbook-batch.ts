/** Any worksheet function over a stream of rows, from standard input to standard output: dist/soakbook-batch.mjs --help says how. */
import { once } from "node:events";
import { argv, stdin, stdout } from "node:process";
import { computedCsv } from "./csv-stream.ts";
import { computedNdjson } from "./ndjson-stream.ts";
import { optionsFrom } from "./options.ts";
import { Refusal } from "./refusal.ts";

// Whoever reads may stop early, as `head` does: then there is nobody left to compute for.
stdout.on("error", () => process.exit(0));

try {
  const options = optionsFrom(argv.slice(2));
  const texts = "print" in options ? [options.print] : options.format === "csv" ? computedCsv(stdin, options) : computedNdjson(stdin, options);
  for await (const text of texts) if (text !== "" && !stdout.write(text)) await once(stdout, "drain");
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
