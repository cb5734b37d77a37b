import { COST_SHARE_KINDS, programShare } from "../cost/cost-share.ts";
import { orderAmount, orderedQuantity } from "../cost/order-amount.ts";
import { inKindValue } from "../cost/volunteer-value.ts";
import {
  closedDays,
  FEWEST_NOTICE_DAYS,
  firstDigDate,
  isBusinessDay,
  MOST_BUSINESS_DAYS,
  MOST_NOTICE_DAYS,
} from "../earthwork/dig-date.ts";
import { perAreaProgramPage, percentProgramPage, excelWorkday, kansasOneCall } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { volunteerDollarsByPlace, volunteerDollarsPerHour, volunteerHour } from "../published/volunteer-hour.ts";
import { choice, count, date, hours, money, number, percent, rangeOf, tableRange, text } from "./calling/arguments.ts";
import { isCellError } from "./calling/cell.ts";
import { priceOf } from "./price-table.ts";
import { readerOf, refused } from "./calling/reading.ts";
import { areTooExtreme, whyRefused } from "./calling/sentences.ts";
import { aboutSmallPercent, isSmallPercent, takenAsItStands } from "./calling/small-percents.ts";
import { stepsOf } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const wholePackagesRule = commonPractice("Whole packages, the minimum order and one delivery are paid");

export const priced = worksheetFunction({
  name: "PRICED",
  summary:
    "What an order of one item costs by the Prices table, whose columns are Item, Unit price, Unit, Package size, Minimum order, Delivery and Price date: whole packages, minimum order and delivery counted.",
  arguments: [number("quantity", "Quantity").atLeast(0), text("item", "Item"), tableRange("prices", "Prices table")],
  result: money("Amount"),
  sources: [wholePackagesRule],
  cautions: [
    {
      when({ quantity, item, prices }) {
        const price = priceOf(item, prices);
        return !isCellError(price) && quantity > 0 && orderedQuantity(quantity, price) > quantity;
      },
      about: "More of the item is paid for than asked: it comes in whole packages or with a minimum order.",
      says: ({ item }) => `More ${item} is paid for than asked: it comes in whole packages or with a minimum order.`,
    },
    {
      when({ item, prices }) {
        const price = priceOf(item, prices);
        return !isCellError(price) && !price.isDated;
      },
      about: "The price of the item has no date: note when the supplier gave it.",
      says: ({ item }) => `The price of ${item} has no date: note when the supplier gave it.`,
    },
  ],
  example: {
    arguments: [10.5, "compost", [["compost", 32, "cu yd", 0.5, 2, 60, 46_000]]],
    result: 396,
    from: computedByHand("21 half yards are 10.5 cu yd, at 32 a cu yd, and 60 for delivery"),
  },
  equation: [
    "bought = the larger of quantity and minimum order, rounded up to whole packages   (the item's unit)",
    "amount = bought x unit price + delivery; 0 for an order of nothing   (money)",
  ],
  working: ({ quantity, item, prices }) =>
    stepsOf(quantity === 0 ? undefined : priceOf(item, prices), (price) => [
      { label: "Bought", value: orderedQuantity(quantity, price) },
      { label: "Unit price", value: price.unitPrice, kind: "money" },
      { label: "Delivery", value: price.delivery, kind: "money" },
    ]),
  calculate({ quantity, item, prices }) {
    const price = priceOf(item, prices);
    if (isCellError(price)) return price;
    const amount = orderAmount(quantity, price);
    return Number.isFinite(amount) ? amount : areTooExtreme();
  },
});

const percentRate = percent("rate", "Rate").rule;
const readPercentRate = readerOf(percentRate, "us");

export const costShare = worksheetFunction({
  name: "COSTSHARE",
  summary: "The part of a garden's cost that a program pays, by its form: per area, per volume, percent or flat.",
  arguments: [
    choice("kind", "Kind", COST_SHARE_KINDS),
    number("basis", "Basis").atLeast(0),
    number("rate", "Rate").atLeast(0),
    money("cap", "Cap").leftOutMeans("there is no cap"),
    number("smallestBasis", "Smallest basis").atLeast(0).optional(0),
  ],
  result: money("Program's part"),
  sources: [perAreaProgramPage.place("rebate per square foot, cap and smallest garden"), percentProgramPage.place("full cost up to a cap")],
  cautions: [
    {
      when: ({ kind, rate }) => kind === "percent" && isSmallPercent(rate),
      about: aboutSmallPercent("A rate"),
      says: ({ rate }, speaker) => takenAsItStands("Rate", rate, speaker),
    },
    {
      when: ({ basis, smallestBasis }) => basis < smallestBasis,
      says: "The basis is under the smallest that counts: the program pays nothing.",
    },
    {
      when: ({ kind, basis, rate, cap, smallestBasis }) =>
        cap !== undefined && programShare(kind, basis, rate, undefined, smallestBasis) > cap,
      says: "The cap holds: the program pays no more, however large the garden.",
    },
  ],
  example: {
    arguments: ["per area", 80, 41, 3000, 50],
    result: 3000,
    from: perAreaProgramPage.place("rebate per square foot, cap and smallest garden"),
  },
  equation: [
    "per area, per volume: rate x basis; percent: rate / 100 x basis; flat: rate   (money)",
    "never more than the cap; 0 where the basis is under the smallest that counts",
  ],
  working: ({ kind, basis, rate: paid, smallestBasis }) => [
    { label: "Before the cap", value: programShare(kind, basis, paid, undefined, smallestBasis), kind: "money" },
  ],
  calculate({ kind, basis, rate, cap, smallestBasis }) {
    if (kind === "percent" && readPercentRate(rate) === refused) return whyRefused(percentRate, rate, "us", "Rate");
    return programShare(kind, basis, rate, cap, smallestBasis);
  },
});

// The list runs from year to year.
const { "Puerto Rico": leastDollars, "District of Columbia": mostDollars } = volunteerDollarsByPlace.values;
const [latestYear, latestDollars] = [...volunteerDollarsPerHour.values].reduce((_, later) => later);

export const volunteerValue = worksheetFunction({
  name: "VOLUNTEERVALUE",
  summary: "In-kind value of volunteers' hours at the user's own rate for the year they were worked.",
  arguments: [hours("hours", "Hours"), money("hourlyRate", "Rate an hour")],
  result: money("In-kind value"),
  sources: [volunteerDollarsPerHour.from, volunteerDollarsByPlace.from],
  cautions: [
    {
      when: ({ hourlyRate }) => hourlyRate < leastDollars || hourlyRate > mostDollars,
      says: `The values read run from $${leastDollars.toFixed(2)} (Puerto Rico, 2020) to $${mostDollars.toFixed(2)} (District of Columbia, 2020), and the newest national one is $${latestDollars.toFixed(2)} for ${latestYear}: cite the year and the state of this rate, and check what the funder takes.`,
    },
  ],
  example: { arguments: [10, latestDollars], result: 318, from: volunteerHour.place("national value for 2022, $31.80, times 10") },
  equation: ["value = hours x rate an hour   (money)"],
  calculate: ({ hours: worked, hourlyRate }) => inKindValue(worked, hourlyRate),
});

export const digDate = worksheetFunction({
  name: "DIGDATE",
  summary:
    "First day to dig by the business days of a one-call ticket, the day of its issue not counted. Not before it, where local law says no other; the date on the ticket decides.",
  arguments: [
    date("issueDate", "Issue date"),
    count("businessDays", "Business days").atLeast(1).atMost(MOST_BUSINESS_DAYS),
    rangeOf(date("holidays", "Holiday")).optional([]),
  ],
  result: number("First day to dig"),
  sources: [
    kansasOneCall.place("call timeline: tickets of Saturday, Sunday and Monday are all lawful on Thursday"),
    excelWorkday.place("a count that leaves out the start date, weekends and holidays"),
  ],
  cautions: [
    {
      when: () => true,
      says: "Local law decides, and the ticket says the day: go by it. Dig only when every utility has answered, and ask the one-call center again when the ticket runs out.",
    },
    {
      when: () => true,
      says: "Count from the day the center issued the ticket, and give one more where it was issued after 4 p.m. or the hour is not known: some states count it as the next business day's.",
    },
    {
      when: ({ issueDate, holidays }) => !isBusinessDay(Math.floor(issueDate), closedDays(holidays)),
      says: "The ticket is of a weekend or a holiday: it is counted as one of the next business day.",
    },
    { when: ({ holidays }) => holidays.length === 0, says: "No holidays are given: each one on the way makes it a day later." },
    {
      when: ({ businessDays }) => businessDays < FEWEST_NOTICE_DAYS || businessDays > MOST_NOTICE_DAYS,
      says: `States ask for two to six business days, and days that must have passed in full are one more here (two full days are ${FEWEST_NOTICE_DAYS}): check the notice your state asks for.`,
    },
  ],
  example: {
    arguments: [39_722, 151, [[39_778], [39_786], [39_834]]],
    result: 39_938,
    from: excelWorkday.place("example: 151 days after 1 October 2008 with three holidays is 5 May 2009"),
  },
  equation: [
    "first day = the day on which the business days after the issue are full; an issue on a weekend or a holiday is one of the next business day",
  ],
  calculate: ({ issueDate, businessDays, holidays }) => firstDigDate(issueDate, businessDays, holidays),
});
