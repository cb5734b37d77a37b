/** Every word of the estimate view. Money is in the program's own currency, so that no sign stands before it. */
export const estimateText = {
  totals: {
    title: "Estimate",
    none: "No lines yet. The draft below starts from the basin.",
    cost: "Cost",
    costHint: (percent: string) => `Cash lines and ${percent} % contingency`,
    cash: "Cash lines",
    contingency: "Contingency",
    costShare: "Cost share",
    ownPart: "Left to pay",
    inKind: "In-kind value",
    inKindHint: "Kept apart from the cost",
    treated: (unit: string) => `Cost for each ${unit} treated`,
    treatedHint: (area: string) => `${area} of roof and paving drain here`,
    held: (unit: string) => `Cost for each ${unit} held`,
    heldHint: (volume: string) => `${volume} when full`,
    unpriced: (lines: number) =>
      lines === 1
        ? "One line has no amount and is missing from these totals."
        : `${lines} lines have no amount and are missing from these totals.`,
    noAmount: "no amount",
    announced: (cost: string) => `The estimate costs ${cost}.`,
  },

  lines: {
    title: "Lines",
    where: "They stand on sheet Estimate lines; prices on sheet Prices.",
    line: (quantity: string, unit: string) => `${quantity} ${unit}`.trim(),
    noQuantity: "no quantity",
    noItem: "Line without an item",
    bought: (bought: string, unit: string) => `${bought} ${unit}`.trim() + " to buy",
    at: (price: string) => `at ${price}`,
    delivery: (delivery: string) => `${delivery} delivery`,
    priced: (date: string) => `price of ${date}`,
    inKind: "in-kind",
    paidBy: (funder: string) => `paid by ${funder}`,
  },

  lookAgain: "To look at again",

  draft: {
    title: "Draft from the basin",
    explain:
      "These lines will be added to sheet Estimate lines. Lines that stand there stay as they are. Quantities are rounded up to a hundredth.",
    standsAll: "Every line that the basin asks for is there.",
    add: (lines: number) => (lines === 1 ? "Add this line" : `Add these ${lines} lines`),
    added: (lines: number, yard: string) =>
      lines === 1 ? `One line was added to the estimate of ${yard}.` : `${lines} lines were added to the estimate of ${yard}.`,
    differs: "The basin now asks for another quantity:",
    onSheet: (item: string, onSheet: string, drafted: string) => `${item}: ${onSheet} on the sheet, ${drafted} by the basin`,
    take: (drafted: string) => `Take ${drafted}`,
    taken: (item: string, drafted: string) => `${item} was set to ${drafted}.`,
  },

  add: {
    open: "Add a line",
    title: "Add a line",
    item: "Item",
    itemHint: "As it stands on Prices",
    blank: "Choose an item",
    quantity: "Quantity",
    kind: "Cash or in-kind",
    kinds: { cash: "Cash", "in-kind": "In-kind" },
    note: "Note, if any",
    save: "Add the line",
    missing: "Item is missing.",
    done: (item: string) => `${item} was added to Estimate lines.`,
    noItems: "Sheet Prices has no items yet: add them there first.",
  },

  exports: {
    title: "Files to hand on",
    explain: "Each opens without Soakbook. Numbers are as of today.",
    names: {
      "estimate.xlsx": "Estimate, spreadsheet",
      "estimate.csv": "Estimate, comma-separated",
      "estimate.html": "Estimate, to print",
      "quantities.html": "Quantity list for a contractor, no prices",
      "handout.html": "Handout for the homeowner",
    },
    saved: (fileName: string) =>
      `${fileName} was offered to this window to save. A page to print opens in any browser. Where no file arrives, this window saves none: use the buttons below.`,
    onSheets: "On a sheet of this workbook, to print in Excel",
    sheets: { estimate: "Estimate", quantities: "Quantity list", handout: "Handout" },
    onSheet: (sheet: string) => `A sheet named ${sheet} was added, one page wide: print it in Excel, then delete it.`,
    failed: (reason: string) => `The file was not made: ${reason}`,
    working: "Making the file",
    copy: "Copy the estimate as cells",
    copied: "The estimate is on the clipboard: paste it into any spreadsheet.",
    notCopied: "The clipboard is closed to this pane: copy the lines on sheet Estimate lines instead.",
    fallback: "Nothing saved? Some windows of Excel, on the web and on Mac above all, save no files and say nothing about it.",
  },

  many: {
    title: "Estimates of several yards",
    which: "Yards to export",
    all: "All yards with lines",
    chosen: (count: number) => (count === 1 ? "1 yard chosen" : `${count} yards chosen`),
    chooseFirst: "Choose a yard first.",
    noLines: "no lines",
  },
} as const;

export function moneyWords(value: number): string {
  return value.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
}
