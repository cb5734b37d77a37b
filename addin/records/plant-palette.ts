/**
 * A starter palette for rain gardens of the eastern and central United States, with a few western plants.
 *
 * Ratings  U.S. Army Corps of Engineers, National Wetland Plant List, national download 2020 v1, read in transcription.
 *          "NL" is not on the list; null is listed, but not rated in that region. The 2022 update touched two species of
 *          the Arid West alone; its names were not seen, so the year stays 2020.
 * Sizes, spacing, sun, bloom and zone  from memory for the most part: check before use. Blank for the western rows.
 * Limits   A rating tells where a plant is found wild, not where it thrives in a garden: the zone is not taken from it.
 *          Check each plant against the state's invasive list at the time of planting.
 */
export type PaletteRow = readonly [
  scientificName: string,
  commonName: string,
  form: string,
  leastHeightFeet: number | null,
  mostHeightFeet: number | null,
  spacingFeet: number | null,
  sun: string | null,
  bloom: string | null,
  zone: string | null,
  midwest: string | null,
  northcentralAndNortheast: string | null,
  easternMountainsAndPiedmont: string | null,
  atlanticAndGulfCoastalPlain: string | null,
  westernMountainsValleysAndCoast: string | null,
  aridWest: string | null,
];

export const RATING_LIST_YEAR = 2020;

export const plantPalette: readonly PaletteRow[] = [
  ["Asclepias incarnata", "swamp milkweed", "perennial", 2, 4, 2, "sun to part shade", "6 to 8", "A B", "OBL", "OBL", "OBL", "OBL", "OBL", "OBL"],
  ["Asclepias tuberosa", "butterfly milkweed", "perennial", 1, 3, 1.5, "sun", "5 to 8", "C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Amsonia hubrichtii", "threadleaf bluestar", "perennial", 2, 2, 1.5, "sun to part shade", "5 to 6", "B C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Aquilegia canadensis", "columbine", "perennial", 2, 2, 1, "part shade", "4 to 6", "C", "FACU", "FACU", "FAC", "FACU", "FAC", null],
  ["Baptisia australis", "blue wild indigo", "perennial", 3, 5, 1.5, "sun to part shade", "5 to 6", "C", "FACU", "FACU", "FACU", "FACU", null, null],
  ["Chelone glabra", "turtlehead", "perennial", 1, 4, 1.25, "part shade", "8 to 10", "A", "OBL", "OBL", "OBL", "OBL", null, null],
  ["Chrysogonum virginianum", "green-and-gold", "groundcover", 0.5, 1, 1, "part shade to shade", "3 to 6", "C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Symphyotrichum novae-angliae", "New England aster", "perennial", 2, 6, 2.5, "sun to part shade", "8 to 10", "B", "FACW", "FACW", "FACW", "FACW", "FACW", "FACW"],
  ["Eurybia divaricata", "white wood aster", "perennial", 0.5, 3, 1.5, "part shade to shade", "7 to 10", "C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Iris versicolor", "northern blue flag", "perennial", 2, 3, 1.25, "sun to part shade", "5 to 7", "A", "OBL", "OBL", "OBL", "OBL", "OBL", null],
  ["Iris virginica", "southern blue flag", "perennial", 2, 3, 1.25, "sun to part shade", "5 to 7", "A", "OBL", "OBL", "OBL", "OBL", null, null],
  ["Lobelia cardinalis", "cardinal flower", "perennial", 2, 4, 1, "sun to part shade", "7 to 9", "A B", "OBL", "OBL", "FACW", "FACW", "FACW", "OBL"],
  ["Lobelia siphilitica", "blue lobelia", "perennial", 2, 3, 1, "part shade", "7 to 9", "A B", "OBL", "FACW", "FACW", "OBL", "OBL", null],
  ["Eutrochium maculatum", "spotted joe-pye", "perennial", 4, 6, 2.5, "sun to part shade", "7 to 9", "A B", "OBL", "OBL", "FACW", "FACW", "OBL", "OBL"],
  ["Eutrochium fistulosum", "hollow joe-pye", "perennial", 5, 8, 3, "sun to part shade", "7 to 9", "A B", "OBL", "FACW", "FACW", "FACW", null, null],
  ["Eupatorium perfoliatum", "boneset", "perennial", 3, 5, 2, "sun to part shade", "7 to 9", "A B", "OBL", "FACW", "FACW", "FACW", null, null],
  ["Vernonia noveboracensis", "NY ironweed", "perennial", 4, 6, 2.5, "sun", "8 to 9", "A B", "FACW", "FACW", "FACW", "FACW", "FAC", "FAC"],
  ["Vernonia fasciculata", "prairie ironweed", "perennial", 3, 5, 2, "sun", "7 to 9", "A B", "FACW", "FACW", "FAC", "FACW", "FACW", null],
  ["Verbena hastata", "blue vervain", "perennial", 3, 5, 1.25, "sun", "7 to 9", "A B", "FACW", "FACW", "FACW", "FAC", "FAC", "FAC"],
  ["Hibiscus moscheutos", "rose mallow", "perennial", 3, 6, 3, "sun", "7 to 9", "A", "OBL", "OBL", "OBL", "OBL", "OBL", "OBL"],
  ["Helenium autumnale", "sneezeweed", "perennial", 3, 5, 2, "sun", "8 to 10", "A B", "FACW", "FACW", "FACW", "FACW", "FACW", "FACW"],
  ["Physostegia virginiana", "obedient plant", "perennial", 2, 4, 1.75, "sun to part shade", "7 to 9", "B", "FACW", "FACW", "FAC", "FACW", "FACW", "FACW"],
  ["Liatris spicata", "dense blazing star", "perennial", 2, 4, 1, "sun", "7 to 8", "B", "FAC", "FAC", "FAC", "FAC", null, null],
  ["Liatris pycnostachya", "prairie blazing star", "perennial", 3, 5, 1, "sun", "7 to 9", "B", "FAC", "FAC", "FACU", "FACU", null, null],
  ["Rudbeckia fulgida", "orange coneflower", "perennial", 2, 3, 1.5, "sun to part shade", "7 to 10", "B C", "OBL", "OBL", "FAC", "FAC", null, null],
  ["Rudbeckia hirta", "black-eyed Susan", "short-lived", 1, 3, 1, "sun", "6 to 9", "C", "FACU", "FACU", "FACU", "FACU", "FACU", "FACU"],
  ["Echinacea purpurea", "purple coneflower", "perennial", 2, 4, 1.5, "sun to part shade", "6 to 9", "C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Monarda fistulosa", "wild bergamot", "perennial", 2, 4, 2, "sun", "7 to 8", "C", "FACU", "FACU", "UPL", "FACU", "FACU", "FACU"],
  ["Pycnanthemum virginianum", "mountain mint", "perennial", 2, 3, 1.5, "sun", "7 to 9", "B", "FACW", "FACW", "FAC", "FAC", "FAC", null],
  ["Zizia aurea", "golden Alexanders", "perennial", 1, 3, 1.25, "sun to part shade", "5 to 6", "B", "FAC", "FAC", "FAC", "FAC", "FAC", null],
  ["Solidago rigida", "stiff goldenrod", "perennial", 3, 5, 2, "sun", "8 to 10", "C", "FACU", "FACU", "UPL", "FACU", "FACU", "FACU"],
  ["Carex vulpinoidea", "fox sedge", "sedge", 1, 3, 1.5, "sun to part shade", "5 to 7", "A", "FACW", "OBL", "OBL", "FACW", "OBL", "OBL"],
  ["Carex stricta", "tussock sedge", "sedge", 2, 3, 1.75, "sun to part shade", "5 to 6", "A", "OBL", "OBL", "OBL", "OBL", "OBL", null],
  ["Carex muskingumensis", "palm sedge", "sedge", 2, 3, 1.75, "part shade", "5 to 6", "A B", "OBL", "OBL", "OBL", "OBL", null, null],
  ["Carex pensylvanica", "Pennsylvania sedge", "sedge", 0.5, 1, 1, "part shade to shade", "4 to 5", "C", "NL", "NL", "NL", "NL", "NL", "NL"],
  ["Juncus effusus", "soft rush", "rush", 2, 4, 1.75, "sun", "6 to 8", "A", "OBL", "OBL", "FACW", "OBL", "FACW", "FACW"],
  ["Panicum virgatum", "switchgrass", "grass", 3, 6, 2.5, "sun", "8 to 9", "B", "FAC", "FAC", "FAC", "FAC", "FACW", "FACW"],
  ["Andropogon gerardii", "big bluestem", "grass", 4, 7, 2.5, "sun", "8 to 9", "C B", "FAC", "FACU", "FAC", "FAC", "FACU", "FACU"],
  ["Schizachyrium scoparium", "little bluestem", "grass", 2, 4, 1.75, "sun", "8 to 9", "C", "FACU", "FACU", "FACU", "FACU", "FACU", "FACU"],
  ["Sporobolus heterolepis", "prairie dropseed", "grass", 2, 3, 1.75, "sun", "8 to 9", "C", "FACU", "FACU", "UPL", "UPL", "FACU", null],
  ["Cornus sericea", "red-osier dogwood", "shrub", 6, 9, 5.5, "sun to part shade", "5 to 6", "A B", "FACW", "FACW", "FACW", "FACW", "FACW", "FACW"],
  ["Cephalanthus occidentalis", "buttonbush", "shrub", 5, 10, 5.5, "sun to part shade", "6 to 8", "A", "OBL", "OBL", "OBL", "OBL", "OBL", "OBL"],
  ["Ilex verticillata", "winterberry; needs male", "shrub", 6, 10, 5.5, "sun to part shade", "5 to 6", "A B", "FACW", "FACW", "FACW", "FACW", null, null],
  ["Aronia melanocarpa", "black chokeberry", "shrub", 3, 6, 4, "sun to part shade", "5", "B", "FACW", "FAC", "FAC", "FAC", "FACW", null],
  ["Clethra alnifolia", "summersweet", "shrub", 4, 8, 4, "part shade", "7 to 8", "B", null, "FAC", "FAC", "FACW", null, null],
  ["Betula nigra", "river birch", "tree", 40, 60, 25, "sun", "4", "B", "FACW", "FACW", "FACW", "FACW", null, null],
  ["Carex obnupta", "slough sedge", "sedge", null, null, null, null, null, null, null, null, null, null, "OBL", "OBL"],
  ["Juncus patens", "spreading rush", "rush", null, null, null, null, null, null, null, null, null, null, "FACW", "FACW"],
  ["Camassia quamash", "small camas", "perennial", null, null, null, null, null, null, null, null, null, null, "FACW", "FACW"],
  ["Deschampsia caespitosa", "tufted hairgrass", "grass", null, null, null, null, null, null, "FACW", "FACW", "FACW", "FACW", "FACW", "FACW"],
  ["Lonicera involucrata", "twinberry", "shrub", null, null, null, null, null, null, null, "FACU", null, null, "FAC", "FAC"],
  ["Spiraea douglasii", "Douglas' spiraea", "shrub", null, null, null, null, null, null, "FAC", null, "FAC", "FAC", "FACW", "FACW"],
  ["Mahonia aquifolium", "tall Oregon-grape", "shrub", null, null, null, null, null, null, "UPL", "UPL", "UPL", "UPL", "FACU", "UPL"],
  ["Symphoricarpos albus", "common snowberry", "shrub", null, null, null, null, null, null, "FACU", "FACU", "FACU", "FACU", "FACU", "FACU"],
  ["Polystichum munitum", "sword fern", "fern", null, null, null, null, null, null, null, "FACU", "FACU", null, "FACU", "FACU"],
];

/**
 * What to know before a plant goes into a small bed or where children and pets are, by scientific name.
 *
 * Source  From memory: check before use. A plant without an entry was not found harmless; it is only not named here.
 */
export const plantCautions: ReadonlyMap<string, string> = new Map([
  ["Asclepias incarnata", "Poisonous if eaten; the sap irritates skin and eyes."],
  ["Asclepias tuberosa", "Poisonous if eaten; the sap irritates skin and eyes."],
  ["Amsonia hubrichtii", "The sap irritates skin."],
  ["Aquilegia canadensis", "Poisonous if eaten."],
  ["Baptisia australis", "Poisonous if eaten."],
  ["Iris versicolor", "Poisonous if eaten; the rootstock irritates skin."],
  ["Iris virginica", "Poisonous if eaten; the rootstock irritates skin."],
  ["Lobelia cardinalis", "Poisonous if eaten."],
  ["Lobelia siphilitica", "Poisonous if eaten."],
  ["Helenium autumnale", "Poisonous if eaten."],
  ["Eupatorium perfoliatum", "Poisonous if eaten."],
  ["Physostegia virginiana", "Spreads: aggressive in a small bed."],
  ["Cephalanthus occidentalis", "Poisonous if eaten."],
  ["Ilex verticillata", "The berries are poisonous if eaten."],
  ["Symphoricarpos albus", "The berries are poisonous if eaten; spreads by suckers."],
  ["Cornus sericea", "Spreads by suckers in a small bed."],
  ["Lonicera involucrata", "The berries are poisonous if eaten."],
]);
