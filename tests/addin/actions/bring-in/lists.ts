/** Lists of an invented town, each kept in another way. */

/** Semicolons, words above the table, units in the cells, the year in the dates, a yard with no soil. */
export const ALDERTON = [
  "Alderton rain garden office;;;;;",
  "Printed 12 May 2026;;;;;",
  "No.;Household;Street address;HSG;Ponding;Paint color of the door",
  'RG-1;Morrow;"14 Alder Row";B;6 in;green',
  "RG-2;Sail loft;3 Quay Lane;Group C;15 cm;=1+1",
  "RG-3;;;loam;0,5 ft;",
  ";;;;;no yard at all",
].join("\n");

/** From a clipboard, metric, without IDs. */
export const BEECHWOOD = [
  "Property\tSite name\tUnits\tPond depth (cm)\tRemarks",
  "9 Mill Street\tThe mill\tmetric\t15\tcall first",
  "10 Mill Street\tMill cottage\tSI\t20\t",
  "9 Mill Street.\tThe mill again\tmetric\t10\t",
].join("\n");

/** Roofs and drives by the address of their yard. */
export const CEDAR_SURFACES = [
  "Address,Part,Surface type,Size (sq m),Percent draining",
  "14 Alder Row,House,Rooftop,48.3,100%",
  "14 alder row,Drive,Driveway,25,50%",
  '3 Quay Lane,Shed,roof,"1,180 sq ft",1',
  "77 Nowhere Street,House,roof,100,1",
  "3 Quay Lane,Yard,gravel garden,12,1",
].join("\n");
