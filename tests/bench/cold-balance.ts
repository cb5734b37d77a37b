/** Prints the milliseconds of the very first balance of this process, every step taken or leaping: node --import tsx cold-balance.ts steps */
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../functions/long-term/rain-record.ts";
import { waterGrid } from "../../functions/long-term/water-grid.ts";
import { randomGarden } from "../functions/long-term/random-garden.ts";
import { inventedHours, seededNumbers } from "../functions/long-term/rain-series.ts";
import { steppedBalance, steppedRain } from "../functions/long-term/step-loop.ts";

const { inches, stepHours } = inventedHours(30);
const record = rainRecord(inches, stepHours);
const stepped = steppedRain(inches, stepHours, 0);
const garden = randomGarden(seededNumbers(1));
const grid = waterGrid(record, garden);

const start = performance.now();
if (process.argv[2] === "steps") steppedBalance(stepped, grid);
else longTermBalance(record, garden);
console.log(performance.now() - start);
