import { PublishedDocument } from "./source.ts";

export const excelWorkday = new PublishedDocument("Microsoft, Excel function help, WORKDAY", "as printed online", "read");
