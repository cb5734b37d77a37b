import { percents, type PublishedMix } from "./soil-mix.ts";
import { PublishedDocument } from "./source.ts";

/** The older homeowner manual; its figures are not current state guidance. */
export const wisconsinRainGardens = new PublishedDocument(
  "University of Wisconsin Extension and Wisconsin DNR, Rain Gardens: a how-to manual for homeowners, GWQ037",
  "2003",
  "from memory",
);

/** Meant for replacing clay. */
export const wisconsinMix: PublishedMix = {
  values: { sand: percents(50, 60), topsoil: percents(20, 30), compost: percents(20, 30) },
  printedTo: 1,
  from: wisconsinRainGardens.place("soil mix for clay"),
};
