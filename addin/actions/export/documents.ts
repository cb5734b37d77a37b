import { fromUs, unitOf } from "../../../functions/quantities.ts";
import { waterNeed } from "../../../functions/worksheet/plants.ts";
import { isoDate } from "../dates.ts";
import { basinInputsOf, draftBasin, type BasinDraft } from "../basin/draft-basin.ts";
import { plantsOfPlan } from "../estimate/draft-estimate.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { markingServiceOf } from "../visits/marking-service.ts";
import { flagsOf, type YardEstimate } from "./estimate-sheets.ts";
import type { PrintedBlock, PrintedDocument } from "./printed-page.ts";
import { moneyWords, numberWords, quantityWords } from "./quantity-words.ts";
import { text } from "./text.ts";

/** An estimate as a page of paper. */
export function estimateDocument({ yard, estimate }: YardEstimate, date: number): PrintedDocument {
  const words = text.columns;
  const total = (label: string, value: string) => ["", label, "", "", "", "", value, "", ""];
  const lines = estimate.lines.map(({ group, item, quantity, unit, kind, price, amount }) => [
    group,
    item,
    quantity === null ? "" : `${numberWords(quantity)} ${unit}`.trim(),
    price === null ? "" : numberWords(price.bought),
    price === null ? "" : moneyWords(price.unitPrice),
    price === null || price.delivery === 0 ? "" : moneyWords(price.delivery),
    "value" in amount ? moneyWords(amount.value) : text.estimate.noPrice,
    kind,
    price?.date === undefined || price.date === null ? "" : isoDate(price.date),
  ]);
  const totals = [
    total(text.totals.cash, moneyWords(estimate.cash)),
    total(text.totals.contingency(numberWords(estimate.contingencyPercent)), moneyWords(estimate.contingency)),
    total(text.totals.cost, moneyWords(estimate.cost)),
    ...(estimate.costShare === null
      ? []
      : [total(text.totals.costShare, moneyWords(estimate.costShare)), total(text.totals.ownPart, moneyWords(estimate.ownPart))]),
    total(text.totals.inKind, moneyWords(estimate.inKind)),
  ];
  const area = unitOf("area", yard.units);
  const { treated, held } = estimate;
  const flags = flagsOf(estimate);
  return {
    title: `${text.estimate.title} ${nameOf(yard)}`,
    subtitle: subtitleOf(yard, date),
    blocks: [
      {
        table: {
          caption: text.quantities.materials,
          columns: [
            ...[words.group, words.item].map((heading) => ({ heading, isNumber: false })),
            ...[words.quantity, words.bought, words.unitPrice, words.delivery, words.amount].map((heading) => ({
              heading,
              isNumber: true,
            })),
            ...[words.kind, words.priceDate].map((heading) => ({ heading, isNumber: false })),
          ],
          rows: [...lines, ...totals],
          totals: totals.length,
        },
      },
      {
        facts: [
          [text.totals.treated(area), numberWords(treated.area, 1)],
          [text.totals.costOfTreated(area), "value" in treated.cost ? moneyWords(treated.cost.value) : treated.cost.sentence],
          [text.totals.held(held.unit), held.volume === null ? "–" : numberWords(held.volume, 1)],
          [text.totals.costOfHeld(held.unit), "value" in held.cost ? moneyWords(held.cost.value) : held.cost.sentence],
        ],
      },
      ...(flags.length === 0 ? [] : [{ heading: text.estimate.lookAgain }, { list: flags }]),
      { paragraph: `${text.computed(isoDate(date))} ${text.confirm} ${text.noOffer}` },
    ],
  };
}

/** What a contractor needs to price the work: sizes and quantities, and nobody's prices. */
export function quantityDocument(program: Program, { yard, estimate }: YardEstimate, date: number): PrintedDocument {
  const words = text.quantities;
  const lines = estimate.lines.filter(({ kind, item }) => kind === "cash" && item !== "");
  const plants = plantsOfPlan(program, yard);
  return {
    title: `${words.title} ${nameOf(yard)}`,
    subtitle: subtitleOf(yard, date),
    blocks: [
      { heading: words.garden },
      ...gardenBlocks(program, yard),
      {
        table: {
          caption: words.materials,
          columns: [
            { heading: text.columns.group, isNumber: false },
            { heading: text.columns.item, isNumber: false },
            { heading: text.columns.quantity, isNumber: true },
            { heading: text.columns.unit, isNumber: false },
          ],
          rows: lines.map(({ group, item, quantity, unit }) => [group, item, quantity === null ? "" : numberWords(quantity), unit]),
          totals: 0,
        },
      },
      ...(plants.length === 0
        ? []
        : [
            {
              table: {
                caption: words.plants,
                columns: [
                  { heading: words.plant, isNumber: false },
                  { heading: words.count, isNumber: true },
                ],
                rows: plants.map(({ plant, count }) => [plant, numberWords(count, 0)]),
                totals: 0,
              },
            },
          ]),
      { paragraph: words.noPrices },
      { heading: words.cautions },
      { list: words.before(markingServiceOf(program, yard).ask) },
      { paragraph: text.confirm },
    ],
  };
}

function gardenBlocks(program: Program, yard: Yard): PrintedBlock[] {
  const basin = draftBasin(basinInputsOf(yard), program.settings);
  if (!("value" in basin.floorArea)) return [{ paragraph: text.sizeMissing }];
  const { units } = yard;
  const facts = text.facts;
  return [
    {
      facts: [
        [facts.floorArea, quantityWords("area", basin.floorArea, units)],
        [facts.rimArea, quantityWords("area", basin.rimArea, units)],
        [facts.floorSize, `${quantityWords("length", basin.floorLength, units)} × ${quantityWords("length", basin.floorWidth, units)}`],
        [facts.floorEdge, quantityWords("length", basin.floorEdge, units)],
        [facts.pondingDepth, quantityWords("depth", basin.pondingDepth, units)],
        [
          facts.sideSlope,
          basin.sideSlope === null ? quantityWords("length", null, units) : facts.sideSlopeWords(numberWords(basin.sideSlope)),
        ],
        [facts.mixDepth, quantityWords("depth", basin.mediaDepth, units)],
        [facts.mulchDepth, quantityWords("depth", fromUs("depth", program.settings.mulchDepthInches, units), units)],
        [facts.dig, quantityWords("earthVolume", basin.digVolume, units)],
        [facts.loose, quantityWords("earthVolume", basin.looseVolume, units)],
      ],
    },
  ];
}

/** One sheet for the people who live with the garden. */
export function handoutDocument(program: Program, yard: Yard, date: number): PrintedDocument {
  const words = text.handout;
  const service = markingServiceOf(program, yard);
  const basin = draftBasin(basinInputsOf(yard), program.settings);
  return {
    title: words.title,
    subtitle: [nameOf(yard), subtitleOf(yard, date)].join(" · "),
    blocks: [
      { heading: words.what },
      { paragraph: words.whatWords(drainsFrom(yard)) },
      { heading: words.size },
      ...sizeBlocks(yard, basin),
      { heading: words.empties },
      { paragraph: emptiesWords(yard, basin) },
      { paragraph: words.tooLong(program.settings.drainHours) },
      { heading: words.watering },
      { paragraph: wateringWords(yard, basin) },
      { heading: words.care },
      { list: words.careWords },
      { heading: words.cautions },
      { list: words.cautionWords(service.ask) },
      { heading: words.call },
      { blanks: words.callLines(service) },
      { paragraph: text.confirm },
    ],
  };
}

function drainsFrom(yard: Yard): string {
  const names = yard.surfaces.flatMap(({ record }) => (record.surface === null ? [] : [record.surface]));
  return names.length === 0 ? "" : ` (${names.join(", ")})`;
}

/** The newest as-built measurement where there is one, else the design; the heading says which. */
function sizeBlocks(yard: Yard, basin: BasinDraft): PrintedBlock[] {
  const { units } = yard;
  const facts = text.facts;
  const size = (length: string, width: string, from: string) => [facts.floorSize, `${length} × ${width}, ${from}`] as const;
  const built = yard.asBuilt.at(-1)?.record;
  if (built !== undefined) {
    const length = (value: number | null) => quantityWords("length", value, units);
    return [
      {
        facts: [
          size(length(built.floorLength), length(built.floorWidth), text.handout.asBuilt),
          [facts.pondingDepth, quantityWords("depth", built.pondingDepth, units)],
          [facts.held, quantityWords("waterVolume", typeof built.waterHeld === "number" ? built.waterHeld : null, units)],
        ],
      },
    ];
  }
  if (!("value" in basin.floorArea)) return [{ paragraph: text.sizeMissing }];
  return [
    {
      facts: [
        size(quantityWords("length", basin.floorLength, units), quantityWords("length", basin.floorWidth, units), text.handout.asDesigned),
        [facts.rimArea, quantityWords("area", basin.rimArea, units)],
        [facts.pondingDepth, quantityWords("depth", basin.pondingDepth, units)],
        [facts.held, quantityWords("waterVolume", basin.waterHeld, units)],
      ],
    },
  ];
}

function emptiesWords(yard: Yard, basin: BasinDraft): string {
  const hours = yard.asBuilt.at(-1)?.record.drainHours ?? ("value" in basin.drawdownHours ? basin.drawdownHours.value : null);
  return hours === null ? text.handout.emptiesUnknown : text.handout.emptiesWords(`${numberWords(hours, 0)} hours`);
}

function wateringWords(yard: Yard, basin: BasinDraft): string {
  const week = "value" in basin.rimArea ? waterNeed.evaluate([basin.rimArea.value, null, yard.units])[0]?.[0] : null;
  if (typeof week !== "number") return text.handout.wateringUnknown;
  return text.handout.wateringWords(`about ${numberWords(week, 0)} ${yard.units === "metric" ? text.liters : text.gallons}`);
}

function nameOf(yard: Yard): string {
  const { yard: name } = yard.site.record;
  return name === null ? yard.siteId : `${yard.siteId}, ${name}`;
}

function subtitleOf(yard: Yard, date: number): string {
  return [yard.site.record.address, isoDate(date)].filter((part) => part !== null).join(" · ");
}
