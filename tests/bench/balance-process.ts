/** The long-term balance of one garden in a process of its own: node balance-process.mjs rain.json garden.json answer.json, the rain a list of hours. */
import { readFileSync, writeFileSync } from "node:fs";
import { argv } from "node:process";
import type { Garden } from "../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../functions/long-term/rain-record.ts";

const [, , rain = "", garden = "", answer = ""] = argv;
const read = (path: string): unknown => JSON.parse(readFileSync(path, "utf8"));
const balance = longTermBalance(rainRecord(read(rain) as number[], 1), read(garden) as Garden);
writeFileSync(answer, JSON.stringify(balance));
