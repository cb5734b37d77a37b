/** A formula whatever its spaces and letter case, and however Excel spells a function of an add-in. */
export function plainFormula(formula: string): string {
  return formula
    .replace(/_xldudf_SOAK_/gi, "SOAK.")
    .split('"')
    .map((part, index) => (index % 2 === 0 ? part.replace(/\s+/g, "").toUpperCase() : part))
    .join('"');
}
