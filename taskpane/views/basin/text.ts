import type { UnitSystem } from "../../../functions/quantities.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { depthWords, roundDepthWords } from "./depths.ts";
import type { SectionGeometry } from "./section-geometry.ts";

const length = (value: number, units: UnitSystem) => quantityWords("length", value, units);
const percentOf = (share: number, units: UnitSystem) => quantityWords("percent", share * 100, units);

function slopeWords(groundFall: number | null): string {
  return groundFall === null ? "slope not measured" : `falls ${percentOf(groundFall, "us")}`;
}

/** Every word of the basin view. Numbers arrive in the yard's units. */
export const basinText = {
  fields: {
    title: "Design inputs",
    more: "Shape, mix and room",
    stormDepth: "Storm depth",
    pondingDepth: "Ponding depth",
    mediaDepth: "Soil mix depth",
    sideSlope: "Side slope",
    shape: "Shape",
    lengthToWidth: "Length to width",
    mixRecipe: "Mix recipe",
    roomLength: "Room across the slope",
    roomWidth: "Room down the slope",
    perRise: "run to 1",
    perWidth: "to 1",
    shapes: { ellipse: "Ellipse", rectangle: "Rectangle" },
    defaultShape: "Not chosen",
    noMix: "No recipe",
    defaults: {
      stormDepth: (depth: string) => `Blank: ${depth}, from Program`,
      pondingDepth: (deepest: string) => `Blank: what drains in time, at most ${deepest}`,
      pondingNow: (depth: string) => `Blank: ${depth}, what drains in time`,
      mediaDepth: "Blank: no soil mix",
      sideSlope: (slope: string) => `Blank: ${slope}, from Program`,
      shape: "Not chosen: an ellipse",
      lengthToWidth: "Blank: 2, longer across the slope",
      room: "Of the water's edge, without the berm. Blank: not checked",
    },
  },

  assumed: {
    title: "What is missing",
    area: "No contributing area yet: add the surfaces that drain to this garden on the Yard tab.",
    rate: "No tested rate yet: test a hole on the Hole test tab, or correct the one whose rate is missing.",
    whatIf: "To look ahead, type an assumed value. It is used on this screen only and never written.",
    contributingArea: "Assumed contributing area",
    testedRate: "Assumed tested rate",
    mark: "Assumed",
    marked: (what: string) => `A what-if: ${what} assumed, not measured. Do not build from these numbers.`,
    areaName: "the contributing area is",
    rateName: "the tested rate is",
    bothName: "contributing area and tested rate are",
  },

  from: {
    title: "Worked out from",
    contributingArea: "Contributing area",
    testedRate: "Tested rate",
    designRate: "Design rate",
    notKnown: "not known",
  },

  results: {
    title: "All sizes and volumes",
    holds: (volume: string) => `holds ${volume}`,
    none: "No size yet",
    floorArea: "Floor area",
    rimArea: "Rim area",
    rimHint: "The water's surface when full",
    floorSize: "Floor, length × width",
    rimSize: "Rim, length × width",
    floorEdge: "Floor edge, for the string",
    pondingDepth: "Ponding depth used",
    waterHeld: "Water held",
    runoff: "Runoff of the storm",
    drawdown: "Drawdown",
    drawdownHint: "From full to empty, soil mix included",
    digVolume: "Dig, in place",
    digHint: "With mulch, soil mix and what the slope adds",
    looseVolume: "Dig, loose",
    looseHint: "What has to be piled or hauled",
    mulch: "Mulch",
    plants: { plan: "Plants of the planting plan", spacing: "Plants by spacing" },
    plantsHint: { plan: "Laid out for the basin on the sheet", spacing: "A first count over the rim area, until there is a planting plan" },
    ruleArea: "Rule of thumb",
    ruleHint: "10 % of the contributing area, common practice",
    pondingGone: (hours: string) => `ponding gone in ${hours}`,
    groups: { size: "Size", water: "Water", materials: "Dig and materials" },
    mixTitle: "Soil mix to buy or keep, loose",
    material: "Material",
    volume: (unit: string) => `Volume (${unit})`,
    noMix: "No mix recipe chosen.",
    announced: (floor: string, drawdown: string, status: string) => `Floor area ${floor}, drawdown ${drawdown}. ${status}`,
  },

  ruleOfThumb: {
    near: "Close to the rule of thumb.",
    more: (storm: string, ponding: string) =>
      `More than the rule of thumb: it knows nothing of the soil or the storm. Here a storm of ${storm} must stand no deeper than ${ponding}, so it needs more room.`,
    less: (storm: string, ponding: string, withMix: boolean) =>
      `Less than the rule of thumb: it knows nothing of the soil or the storm. Here ${ponding} of ponding${withMix ? " and the soil mix" : ""} holds a storm of ${storm} on less room.`,
  },

  checks: {
    title: "Checks",
    passing: (passing: number, all: number) => (passing === all ? "All checks pass" : `${passing} of ${all} checks pass`),
    size: "Size and soil",
    fits: "Fits: it holds the storm and drains in time.",
    nothingYet: "Contributing area and tested rate are missing.",
    notMeasured: "Not measured, so not a pass.",
    drawdown: (hours: string) => `The ponding is gone ${hours} after it stood full`,
    localCodes: "Local codes and licensed practice decide. The limits are your program's Rules sheet.",
  },

  room: {
    name: "Room",
    fits: (rim: string, room: string) => `Fits: ${rim} at the rim, and there is room for ${room}.`,
    tooLarge: (rim: string, room: string) => `Does not fit: it is ${rim} at the rim, and there is room for ${room}.`,
    across: (length: string) => `${length} across the slope`,
    down: (width: string) => `${width} down the slope`,
    remedies: {
      proportions: (outline: string, rim: string) => `It fits as ${outline}: ${rim}.`,
      shape: (outline: string, rim: string) => `It fits as ${outline}: ${rim}.`,
      ponding: (outline: string, rim: string, depth: string) => `It fits with ${depth} of ponding, as ${outline}: ${rim}.`,
      mix: (outline: string, rim: string, depth: string) => `It fits with ${depth} of soil mix under the floor, as ${outline}: ${rim}.`,
      storm: (outline: string, rim: string, depth: string) =>
        `Nothing that holds this storm fits. What fits holds a storm of ${depth}, as ${outline}: ${rim}. Send less water here, or make two basins.`,
    },
    none: "Nothing that was tried fits, whatever the shape, the ponding and the soil mix. Choose another place, or send less water here.",
    outline: (shape: "ellipse" | "rectangle", ratio: string) =>
      `${shape === "ellipse" ? "an ellipse" : "a rectangle"} ${ratio === "1" ? "as long as wide" : `${ratio} times as long as wide`}`,
    use: "Put this into the form",
  },

  earthwork: {
    title: "Cut and fill on the slope",
    digs: (volume: string) => `cut ${volume}`,
    noSlope: "The ground slope is not measured yet. Measure drop and run of a level string on the visit.",
    cut: "Cut, in place",
    cutHint: "With room for mulch and soil mix, on this slope",
    fill: "Berm and fill, compacted",
    leftOver: "Soil left over, in place",
    short: "Soil short, in place",
    bermHeight: "Berm height",
    bermHint: "Of the crest over the ground at the downhill water's edge",
    uphillRise: "Cut above the water, uphill",
    mix: (volume: string) => `Soil mix takes the place of ${volume} of the cut; what the recipe keeps of it goes back.`,
    basis: "Full water stands where a level pad's cut would balance its fill. Loam; berm, sides, freeboard, mulch and soil mix as drawn.",
  },

  alternatives: {
    title: "Three alternatives",
    keptNames: (names: string) => `${names} kept`,
    explain: "Keep what is in the form as A, B or C, tune further, and compare. They stay in this pane until one is chosen.",
    keep: (name: string) => `Keep the form as ${name}`,
    replace: (name: string) => `Replace ${name} by the form`,
    open: (name: string) => `Open ${name} in the form`,
    choose: (name: string) => `Write ${name} to the sheet`,
    table: "Alternatives side by side",
    of: (name: string) => `Alternative ${name}`,
    none: "–",
    rows: {
      shape: "Shape",
      floor: "Floor area",
      rim: "Rim",
      room: "Fits the room",
      verdict: "Checks",
      ponding: "Ponding",
      standing: "Ponding gone in",
      held: "Water held",
      dig: "Dig, in place",
      cost: "Cost",
    },
    outline: (shape: "ellipse" | "rectangle", ratio: string) => `${shape === "ellipse" ? "Ellipse" : "Rectangle"} ${ratio} to 1`,
    room: { fits: "Yes", "too large": "No", "not measured": "Not checked", "no size": "–" },
    fixFirst: "Nothing was kept: put right what is marked first.",
    kept: (name: string) => `Kept as alternative ${name}.`,
    done: (name: string, yard: string) => `Alternative ${name} of ${yard} was written to Sites.`,
  },

  cost: {
    label: "Cost of this draft",
    hint: (percent: string) => `By the lines an estimate would have and today's Prices, with ${percent} of contingency`,
    unpriced: (lines: number) =>
      `${lines === 1 ? "1 line has" : `${lines} lines have`} no price yet and ${lines === 1 ? "is" : "are"} not in it.`,
    none: "No line of it has a price yet: fill in Prices.",
  },

  routing: {
    title: "The design storm, step by step",
    capturedShare: (share: string) => `${share} captured`,
    type: "24-hour storm type",
    typeHint:
      "II in most of the country, I and IA on the Pacific coast, III on the Gulf and Atlantic coasts (TR-55, appendix B). Ask which one local rules name.",
    none: "The storm is followed when the basin has a size.",
    inflow: (unit: string) => `Inflow in each quarter of an hour (${unit})`,
    ponding: (unit: string) => `Ponding depth (${unit})`,
    overflow: (unit: string) => `Overflow in each quarter of an hour (${unit})`,
    axis: "Hours since the rain began",
    chart: (what: string) => `Chart: ${what}. The numbers are in the list above.`,
    rain: "Rain and type",
    rainWords: (depth: string, type: string) => `${depth}, type ${type}`,
    allInflow: "Water that comes",
    peak: "Deepest ponding",
    peakWords: (depth: string, hours: string) => `${depth} after ${hours}`,
    noPonding: "None: it soaks in as it comes",
    pondingGone: "No water stands after",
    empty: "Empty after",
    emptyHint: "Soil mix included",
    notEmpty: "Not within 72 h of the rain's end",
    spills: "Overflow",
    captured: "Captured",
    sentence: (peak: string, empty: string, overflow: string, captured: string) =>
      `Deepest ponding ${peak}. Empty after ${empty}. Overflow ${overflow}, ${captured} captured.`,
    basis: (share: string, rule: string) =>
      `${share} of the rain on the contributing area runs off, as in the whole storm: ${rule}. Rain on the rim counts; soaking goes on through the floor alone. Runoff arrives in the quarter of an hour in which it rains.`,
  },

  sheetOfDrawings: {
    print: "Print the drawing",
    cannotPrint: "This window does not print. Save the drawing into the workbook, and print its sheet in Excel.",
    save: "Save into the workbook",
    saveAgain: "Save again, in place of the last one",
    saved: (yard: string) => `The drawing of ${yard} stands on the sheet Drawings.`,
    hint: "As a picture on the sheet Drawings, with its words above it.",
    assumed: "An assumed basin is not saved into the workbook.",
    title: (yard: string) => `Rain garden of ${yard}`,
    drawn: (date: string) => `Drawn ${date}`,
    zone: (words: string, area: string) => `${words}, ${area}`,
    numbers: (floor: string, rim: string, ponding: string, held: string) =>
      `Floor ${floor} · rim ${rim} · ponding ${ponding} · holds ${held}`,
    earth: (cut: string, leftOver: string, berm: string) => `Cut ${cut} in place · ${leftOver} · berm ${berm} high`,
    leftOver: (volume: string) => `${volume} left over`,
    short: (volume: string) => `${volume} short`,
    footer: "Have buried utilities marked before digging. Local codes and licensed practice decide.",
  },

  cautions: {
    title: "Cautions",
    noToe: "The ground is as steep as the outside of a berm: no berm can stand here. Choose another place.",
  },

  drawing: {
    title: "Plan and section",
    more: "Zones, print and keep the drawing",
    planCaption: "Plan",
    sectionCaption: "Section down the slope",
    none: "The drawing appears when the basin has a size.",
    legend: "Zones",
    zones: {
      A: "A, floor: wettest",
      B: "B, sloped sides: wet, then dry",
      C: "C, rim and berm: driest",
    },
    basis: ({ units, bermCrestWidth, freeboard, bermOuterSlope }: BasinDimensions) =>
      `Drawn with a berm crest of ${length(bermCrestWidth, units)}, ${depthWords(freeboard, units)} of freeboard and outer sides of ${bermOuterSlope} to 1 (common practice, no source). Full water stands where a level pad's cut would balance its fill. The real inlet is where your downspout is.`,
  },

  sheet: {
    title: "On the sheet",
    write: "Write to the sheet",
    back: "Back to what the sheet holds",
    same: "The form holds what the sheet holds.",
    willChange: "Writing changes on Sites:",
    line: (field: string, onSheet: string, here: string) => `${field}: ${onSheet} becomes ${here}`,
    blank: "blank",
    text: (value: string) => `"${value}"`,
    done: (yard: string) => `The basin of ${yard} was written to Sites.`,
    fixFirst: "Nothing was written: put right what is marked first.",
    assumedStay: "Assumed values stay here; they are not written.",
    computes: (area: string) => `The Design sheet computes a floor of ${area}, the same as the pane.`,
    differs: (sheet: string, pane: string) =>
      `The Design sheet computes a floor of ${sheet} and the pane ${pane} from the same cells: a formula on Design may have been changed.`,
  },

  handles: {
    length: "Pull the floor's length",
    width: "Pull the floor's width",
    ponding: "Pull the floor down for more ponding",
    sides: "Pull the water's edge for flatter sides",
  },

  uphill: "uphill",
  downhill: "downhill",

  plan: {
    title: "Plan of the basin",
    inlet: "from the downspout",
    slope: slopeWords,
    edge: (edge: string) => `floor edge ${edge} around`,
    description: (basin: BasinDimensions) => {
      const { units } = basin;
      const wider = 2 * basin.sideSlope * basin.pondingDepth;
      return [
        `Seen from above, to scale, uphill at the top. The level floor, zone A, is ${basin.shape === "ellipse" ? "an ellipse" : "a rectangle"} ${length(basin.floorLength, units)} across the slope and ${length(basin.floorWidth, units)} down it, with an edge of ${length(basin.floorEdge, units)}.`,
        `Sloped sides, zone B, rise to the rim, ${length(basin.floorLength + wider, units)} by ${length(basin.floorWidth + wider, units)}.`,
        `A berm, zone C, with a crest ${length(basin.bermCrestWidth, units)} wide stands outside the rim wherever the ground is lower than its crest.`,
        `Water comes in from the downspout on the uphill side and leaves by a stone-lined overflow sill through the berm.`,
        basin.groundFall === null ? "The ground slope is not measured and drawn level." : `The ground ${slopeWords(basin.groundFall)}.`,
      ].join(" ");
    },
  },

  section: {
    title: "Section down the slope",
    berm: (crest: string, freeboard: string) => `berm crest ${crest} wide, ${freeboard} above sill`,
    sill: ["full water = overflow sill", "full = sill"],
    ponding: (depth: string) => `ponding ${depth}`,
    mulch: (depth: string) => `mulch ${depth}`,
    mix: (depth: string) => `soil mix ${depth}`,
    floor: (width: string) => `floor ${width}`,
    rim: (width: string) => `rim ${width}`,
    ground: (groundFall: number | null) => (groundFall === null ? "ground, slope not measured" : `ground ${slopeWords(groundFall)}`),
    exaggeration: (taller: number) => (taller === 1 ? "heights to the same scale" : `heights drawn × ${taller}`),
    description: (basin: BasinDimensions, section: SectionGeometry, taller: number) => {
      const { units } = basin;
      const depth = (value: number) => depthWords(value, units);
      return [
        `Cut down the slope through the middle, uphill at the left${taller === 1 ? ", to scale" : `, heights drawn ${taller} times taller than true`}.`,
        `The floor is ${length(basin.floorWidth, units)} wide and lies ${depth(basin.pondingDepth)} below the overflow sill; the rim is ${length(section.downhillRim.x - section.uphillRim.x, units)} wide.`,
        basin.uphillRise > 0
          ? `At the uphill rim the ground stands ${roundDepthWords(basin.uphillRise, units)} over the full water and is cut back.`
          : "Full water stands level with the ground at the uphill rim.",
        basin.mulchDepth > 0 ? `Mulch ${depth(basin.mulchDepth)} deep lies on floor and sides, under the finished surface.` : "",
        basin.mixDepth > 0 ? `Soil mix ${depth(basin.mixDepth)} deep lies under the floor.` : "No soil mix lies under the floor.",
        `The berm's crest is ${length(basin.bermCrestWidth, units)} wide, ${depth(basin.freeboard)} above the sill and ${roundDepthWords(section.bermHeight, units)} above the ground under the downhill rim.`,
        basin.groundFall === null
          ? "The ground slope is not measured and drawn level."
          : `The ground ${slopeWords(basin.groundFall)}, ${roundDepthWords(section.groundDrop, units)} from rim to rim.`,
      ]
        .filter((sentence) => sentence !== "")
        .join(" ");
    },
  },
} as const;
