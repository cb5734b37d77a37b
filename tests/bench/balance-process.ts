/** The long-term balance of one garden in a process of its own: node balance-process.mjs rain.txt garden.json answer.json, an hour of rain a line. */
import { readFileSync, writeFileSync } from "node:fs";
import { argv } from "node:process";
import type { Garden } from "../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../functions/long-term/rain-record.ts";

const [, , rain = "", garden = "", answer = ""] = argv;
const record = rainRecord(readFileSync(rain, "utf8").trim().split("\n").map(Number), 1);
const balance = longTermBalance(record, JSON.parse(readFileSync(garden, "utf8")) as Garden);
writeFileSync(answer, JSON.stringify(balance));
