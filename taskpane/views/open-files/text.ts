/** Every word of the files that maps, calendars and other programs read. */
export const openFilesText = {
  title: "Files for other programs",
  explain: "A map, a calendar, or every sheet as plain tables.",
  which: "Yards in the map and the calendar",
  all: "All yards",
  units: "Figures on the map in",
  unitChoices: { us: "sq ft, cu ft", metric: "m², m³" },
  persons: "With owner, telephone and e-mail",
  own: "With your own columns of Sites, on the map",
  personal: "Left out unless you tick it: whoever gets the file can pass it on.",
  map: "Map of the yards (GeoJSON)",
  calendar: "Ticket ends, follow-ups, dig days (iCalendar)",
  tables: "Every sheet as tables (.zip of CSV)",
  tablesExplain: "The tables hold everything that stands on the sheets, owners and telephones too, and a data dictionary.",
  chooseFirst: "Choose a yard first.",
  working: "Making the file",
  saved: (fileName: string) => `${fileName} was offered to this window to save.`,
  points: (count: number) => (count === 1 ? "1 yard is on the map." : `${count} yards are on the map.`),
  days: (count: number) =>
    count === 1
      ? "It holds 1 day."
      : `It holds ${count} days. A calendar that has an earlier file keeps that one's days too: delete there what has moved.`,
  leftOut: "Not on the map",
  more: (count: number) => `and ${count} more`,
  failed: (reason: string) => `The file was not made: ${reason}`,
  fallback: "Nothing saved? Some windows of Excel, on the web and on Mac above all, save no files and say nothing about it.",
} as const;
