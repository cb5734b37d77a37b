import { DECISIONS, decisionStep } from "../../checklist/decisions.ts";
import { namesIn, type Stage, type StageId, type Step } from "../../checklist/stage.ts";
import { stageNamed } from "../../checklist/stages.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { CellValue } from "../../workbook/port.ts";
import { isoDate, monthsAfter } from "../dates.ts";

/** A row of any sheet, by the keys of its columns. */
export type DemoRow = Readonly<Record<string, CellValue>>;

/** The yard as the first part of the demo fills it in. */
export interface DemoSite {
  readonly siteId: string;
  readonly units: UnitSystem;
  readonly slopePercent: number | null;
  /** Steps of the screening visit that the first part answers already. */
  readonly answered: ReadonlySet<string>;
}

/** How far one invented yard has come, in days before today; negative is to come. */
interface DemoJob {
  readonly yard: number;
  readonly ticketAsked?: number;
  /** What somebody decided on a finding of the screening visit that refers. */
  readonly decided?: { readonly step: string; readonly by: string; readonly what: string; readonly paper: string };
  readonly tested?: number;
  readonly designed?: number;
  readonly signed?: number;
  readonly digDay?: number;
  readonly dug?: boolean;
  readonly plants?: readonly (readonly [
    plant: string,
    zone: "A" | "B" | "C",
    planned: number,
    planted: number | null,
    along: number,
    across: number,
  ])[];
  readonly built?: DemoRow;
  readonly volunteers?: readonly (readonly [who: string, hours: number])[];
  readonly looks?: readonly DemoLook[];
  readonly estimate?: readonly DemoRow[];
}

interface DemoLook {
  readonly kind: "1 week" | "1 month" | "1 year";
  readonly stage: StageId;
  /** Answers that do not pass, by step. */
  readonly seen?: Readonly<Record<string, string>>;
  readonly finding: "pass" | "watch" | "fail";
  readonly action?: string;
}

const CREW = "Crew one";
const OPERATORS = "Ferry Power, Osier Gas, Millrace Water";
const FUNDER = "Millrace Water Fund";

/** In the order of the board: built and looked after, dug, about to dig, designed, and with a ticket gone by. */
const jobs: readonly DemoJob[] = [
  {
    yard: 15,
    ticketAsked: 430,
    tested: 415,
    designed: 410,
    signed: 405,
    digDay: 400,
    dug: true,
    volunteers: [
      ["Wren Alder", 5],
      ["Ash Pell", 5],
      ["Linden Moss", 4.5],
      ["Sorrel Birk", 3],
    ],
    plants: [
      ["Iris versicolor", "A", 21, 21, -8, 0],
      ["Asclepias incarnata", "A", 15, 15, 6, 1],
      ["Carex vulpinoidea", "A", 25, 24, 0, -3],
      ["Zizia aurea", "B", 15, 15, -14, 6],
      ["Panicum virgatum", "C", 9, 9, 20, 8],
    ],
    built: {
      shape: "ellipse",
      floorLength: 41,
      floorWidth: 20.5,
      pondingDepth: 6,
      sideSlope: 3,
      sillWidth: 3,
      lowestBerm: 2,
      drainHours: 5,
    },
    looks: [
      { kind: "1 week", stage: "week", finding: "pass" },
      { kind: "1 month", stage: "month", finding: "pass" },
      { kind: "1 year", stage: "year", seen: { "year-weeds": "10 to 25 %" }, finding: "watch", action: "Watch: Weeds and invasives." },
    ],
    estimate: [
      line("plants", "plant quart", 85, "plant", "cash", FUNDER),
      line("mulch", "shredded mulch", 7.6, "cu yd", "cash", FUNDER),
      line("labor", "volunteer hour", 17.5, "h", "in-kind"),
    ],
  },
  {
    yard: 10,
    ticketAsked: 225,
    tested: 215,
    designed: 208,
    signed: 200,
    digDay: 190,
    dug: true,
    volunteers: [
      ["Wren Alder", 4],
      ["Tamar Reed", 4],
      ["Ash Pell", 3.5],
    ],
    plants: [
      ["Carex muskingumensis", "A", 15, 15, -3, 0],
      ["Rudbeckia fulgida", "B", 9, 9, 5, 3],
      ["Schizachyrium scoparium", "C", 7, 6, 8, 4],
    ],
    built: {
      shape: "ellipse",
      floorLength: 15.5,
      floorWidth: 7.5,
      pondingDepth: 8,
      sideSlope: 3,
      sillWidth: 2,
      lowestBerm: 1.5,
      drainHours: 14,
    },
    looks: [
      { kind: "1 week", stage: "week", finding: "pass" },
      { kind: "1 month", stage: "month", seen: { "month-inlet": "Partly blocked" }, finding: "watch", action: "Watch: Inlet." },
    ],
    estimate: [
      line("plants", "plant quart", 31, "plant", "cash", FUNDER),
      line("stone", "river stone", 0.5, "ton", "cash", "Owner"),
      line("labor", "volunteer hour", 11.5, "h", "in-kind"),
    ],
  },
  {
    yard: 9,
    ticketAsked: 40,
    tested: 30,
    designed: 26,
    signed: 22,
    digDay: 9,
    dug: true,
    volunteers: [
      ["Linden Moss", 3],
      ["Tamar Reed", 3],
    ],
    plants: [
      ["Juncus effusus", "A", 7, 7, -0.8, 0],
      ["Liatris spicata", "B", 5, 5, 1.2, 0.6],
    ],
  },
  {
    yard: 2,
    ticketAsked: 27,
    tested: 20,
    designed: 14,
    signed: 8,
    digDay: -2,
    estimate: [
      line("soil", "compost", 1.1, "cu yd", "cash", FUNDER),
      line("mulch", "shredded mulch", 2.1, "cu yd", "cash", FUNDER),
      line("plants", "plant quart", 116, "plant", "cash", "Owner"),
      line("labor", "volunteer hour", 18, "h", "in-kind"),
    ],
  },
  {
    yard: 11,
    ticketAsked: 35,
    decided: {
      step: "property-line",
      by: "Clerk of works, Tamsin Ferry",
      what: "8 ft is enough while the overflow leaves on the house side",
      paper: "Letter in the binder, Y-011",
    },
    tested: 28,
    designed: 6,
    estimate: [line("soil", "sand", 1.7, "cu yd", "cash"), line("soil", "top soil", 0.6, "cu yd", "cash")],
  },
  { yard: 13, ticketAsked: 45, tested: 33 },
];

function line(
  group: string,
  item: string,
  quantity: number,
  unit: string,
  kind: "cash" | "in-kind",
  funder: string | null = null,
): DemoRow {
  return { group, item, quantity, unit, kind, funder };
}

/** The further rows of the demo, sheet by sheet. Days count back from today, so that tickets and looks are always due. */
export function demoJobs(sites: readonly DemoSite[], today: number) {
  const told = jobs.flatMap((job) => {
    const site = sites[job.yard - 1];
    return site === undefined ? [] : [{ job, site }];
  });
  const all = <Row>(rows: (job: DemoJob, siteId: string, units: UnitSystem) => readonly Row[]) =>
    told.flatMap(({ job, site }) => rows(job, site.siteId, site.units));
  const dug = (job: DemoJob) => (job.dug === true && job.digDay !== undefined ? today - job.digDay : null);
  return {
    visits: [...sites.flatMap((site) => enquiryOf(site, today)), ...told.flatMap(({ job, site }) => visitsOf(job, site, today))],
    estimateLines: all((job, siteId) => (job.estimate ?? []).map((each) => ({ siteId, ...each }))),
    digDays: all((job, siteId) =>
      (job.volunteers ?? []).map(([who, hours]) => ({ siteId, date: dug(job), entry: "sign-in", who, hours, by: CREW })),
    ),
    planting: all((job, siteId, units) =>
      (job.plants ?? []).map(([plant, zone, planned, planted, alongLength, acrossWidth]) => ({
        siteId,
        plant,
        zone,
        planned,
        spacing: units === "metric" ? 0.45 : 1.5,
        alongLength,
        acrossWidth,
        planted,
        plantedOn: dug(job),
      })),
    ),
    asBuilt: all((job, siteId) => (job.built === undefined ? [] : [{ siteId, date: (dug(job) ?? 0) + 3, by: CREW, ...job.built }])),
    followUps: all((job, siteId) => followUpsOf(job, siteId, dug(job))),
    prices: demoPrices(today),
  };
}

function enquiryOf(site: DemoSite, today: number): DemoRow[] {
  return passing(stageNamed("enquiry"), site, today - 520, { contact: "By letter box", problem: "Roof water runs to the street" });
}

function visitsOf(job: DemoJob, site: DemoSite, today: number): DemoRow[] {
  const { ticketAsked, tested, designed, signed, digDay } = job;
  const at = (stage: StageId, before: number | undefined, said: Readonly<Record<string, CellValue>> = {}) =>
    before === undefined ? [] : passing(stageNamed(stage), site, today - before, said);
  const day = (before: number) => isoDate(today - before);
  const dug = job.dug === true ? digDay : undefined;
  return [
    ...at("screening", ticketAsked, { "water-table-depth": site.units === "metric" ? 1500 : 60 }),
    ...decisionRows(job, site, today),
    ...at("ticket", ticketAsked, {
      "ticket-number": `TF-${String(2000 + job.yard)}`,
      "ticket-operators": OPERATORS,
      "ticket-issued": `${day(ticketAsked ?? 0)} at 09:20`,
      "ticket-lawful-from": `${day((ticketAsked ?? 0) - 7)} at 07:00`,
      "ticket-expires": day((ticketAsked ?? 0) - 30),
    }),
    ...at("test-visit", tested),
    ...at("design-check", designed, { "design-version": "1", "designed-by": CREW, "design-checked-by": "Crew two" }),
    ...at("agreement", signed, {
      "agreement-signed": day(signed ?? 0),
      "agreement-signed-by": "The owner",
      "agreement-until": isoDate(monthsAfter(today - (signed ?? 0), 60)),
      "agreement-copy": `Binder, ${site.siteId}`,
    }),
    ...at("pre-dig", signed === undefined ? undefined : Math.max((digDay ?? 0) + 1, 0), {
      "dig-date": day(digDay ?? 0),
      volunteers: job.volunteers?.length ?? 4,
    }),
    ...at("dig-day", dug, { "emergency-contact": "911; hospital on Bellrope Street; the address is on the gate" }),
    ...at("planting", dug, {
      "plants-planted": (job.plants ?? []).reduce((sum, [, , , planted]) => sum + (planted ?? 0), 0),
      waterer: "The owner",
    }),
    ...at("as-built", job.built === undefined || dug === undefined ? undefined : dug - 3),
    ...(job.looks ?? []).flatMap(({ stage, kind, seen = {} }) =>
      at(stage, daysBefore(kind, dug ?? 0, today), { [`${stage}-date`]: day(daysBefore(kind, dug ?? 0, today)), ...seen }),
    ),
  ];
}

function decisionRows({ decided, ticketAsked }: DemoJob, { siteId }: DemoSite, today: number): DemoRow[] {
  if (decided === undefined || ticketAsked === undefined) return [];
  const { step, by, what, paper } = decided;
  const { says, verdict } = DECISIONS[1];
  return [
    { siteId, date: today - ticketAsked, stage: "screening", step: decisionStep(step), answer: says, verdict, by, note: what, link: paper },
  ];
}

/** Every step of the stage with what is said of it, or with what passes. */
function passing(stage: Stage, site: DemoSite, day: number, said: Readonly<Record<string, CellValue>>): DemoRow[] {
  const names = stage.eachOf === undefined ? [] : namesIn(String(said[stage.eachOf.list] ?? ""));
  // What is asked only after another answer is asked here: none of these yards has water or rock to measure to.
  const steps = [...stage.steps, ...names.flatMap((name) => stage.eachOf?.step(name) ?? [])];
  return steps
    .filter((step) => step.optional !== true && !(stage.id === "screening" && site.answered.has(step.id)))
    .map((step) => ({
      siteId: site.siteId,
      date: day,
      stage: stage.id,
      step: step.id,
      by: CREW,
      ...answered(step, site, said[step.id] ?? null),
    }));
}

const FAR_FEET = 32;
const FAR_METRES = 10;

function answered({ answer }: Step, { units, slopePercent }: DemoSite, said: CellValue): DemoRow {
  switch (answer.kind) {
    case "measured":
      if (answer.orNone !== undefined) return { answer: answer.orNone, verdict: "pass" };
      return { answer: units === "metric" ? FAR_METRES : FAR_FEET, unit: units === "metric" ? "m" : "ft", rule: answer.rule };
    case "slope":
      return { answer: slopePercent, unit: "%", rule: answer.rule };
    case "chosen": {
      const option = answer.options.find(({ says, verdict }) => (said === null ? verdict === "pass" : says === said));
      return { answer: option?.says ?? null, verdict: option?.verdict ?? null };
    }
    case "number":
      return { answer: said ?? 0, unit: answer.unit[units] };
    case "date":
    case "text":
      return { answer: said };
  }
}

function daysBefore(kind: DemoLook["kind"], dug: number, today: number): number {
  if (kind === "1 week") return dug - 7;
  return today - monthsAfter(today - dug, kind === "1 month" ? 1 : 12);
}

function followUpsOf({ looks = [], built }: DemoJob, siteId: string, dug: number | null): DemoRow[] {
  if (dug === null || built === undefined) return [];
  const due = { "1 week": dug + 7, "1 month": monthsAfter(dug, 1), "1 year": monthsAfter(dug, 12) };
  const done = looks.map(({ kind, finding, action = null }) => ({
    siteId,
    kind,
    due: due[kind],
    done: due[kind],
    by: CREW,
    finding,
    action,
  }));
  const next = looks.some(({ kind }) => kind === "1 year")
    ? { kind: "yearly", due: monthsAfter(dug, 24) }
    : { kind: "1 year", due: due["1 year"] };
  return [...done, { siteId, ...next }];
}

/** What things cost in Tamsin Ferry. One price is older than six months, so that the board has it to point out. */
function demoPrices(today: number): DemoRow[] {
  const recent = today - 40;
  const yard = (item: string, unitPrice: number, minimumOrder: number | null, delivery = 60) => ({
    item,
    unitPrice,
    unit: "cu yd",
    packageSize: 0.5,
    minimumOrder,
    delivery,
    priceDate: recent,
    supplier: "Weir End yard",
  });
  const plant = (item: string, unitPrice: number) => ({
    item,
    unitPrice,
    unit: "plant",
    packageSize: 1,
    priceDate: recent,
    supplier: "Candlewick plants",
  });
  return [
    yard("sand", 34, 2),
    yard("topsoil", 29, 2),
    yard("compost", 36, 1),
    yard("peat", 88, null),
    yard("shredded mulch", 38, 1, 45),
    {
      item: "river stone",
      unitPrice: 70,
      unit: "ton",
      packageSize: 0.5,
      minimumOrder: 0.5,
      delivery: 40,
      priceDate: today - 300,
      supplier: "Weir End yard",
    },
    plant("plant plug", 3.25),
    plant("plant quart", 6.5),
    plant("plant gallon", 11),
    plant("plant 3 gallon", 28),
    { item: "tool hire", unitPrice: 85, unit: "day", packageSize: 1, priceDate: recent, supplier: "Tannery hire" },
    { item: "soil disposal", unitPrice: 28, unit: "cu yd", packageSize: 1, delivery: 90, priceDate: recent, supplier: "Weir End yard" },
    { item: "volunteer hour", unitPrice: 31.8, unit: "h", priceDate: recent },
  ];
}
