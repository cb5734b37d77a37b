/** The longest of 1, 2, 5, 10, 20, 50 … and 0.1, 0.2, 0.5 that is no longer than there is room for. */
export function scaleBarLength(room: number): number {
  const tens = 10 ** Math.floor(Math.log10(room));
  const step = [5, 2, 1].find((multiple) => multiple * tens <= room) ?? 1;
  return step * tens;
}

/** How many times taller than true a section is drawn: whole, as much as its room allows, at most `most`. */
export function verticalExaggeration(trueHeight: number, roomHeight: number, most: number): number {
  return Math.max(1, Math.min(most, Math.floor(roomHeight / trueHeight)));
}
