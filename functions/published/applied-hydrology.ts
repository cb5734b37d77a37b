import { PublishedDocument } from "./source.ts";

/** The inputs of its examples were read in transcription, their answers are from memory. */
export const appliedHydrology = new PublishedDocument("Chow, Maidment and Mays, Applied Hydrology", "1988", "from memory");
