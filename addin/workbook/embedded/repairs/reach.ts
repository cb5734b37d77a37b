/**
 * A part of the grid with the members that a repair needs of it. They are no promise of the grid's, so a version without one
 * of them is refused by name at the start, before anybody has typed into a grid that is mended by half.
 */
export function reach<Part extends object>(part: object, name: string, members: readonly (keyof Part & string)[]): Part {
  const missing = members.find((member) => !(member in part));
  if (missing !== undefined)
    throw new Error(`The grid's ${name} has no "${missing}", which a repair needs: see addin/workbook/embedded/repairs/.`);
  return part as Part;
}
