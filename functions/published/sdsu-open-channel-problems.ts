import { PublishedDocument } from "./source.ts";

export const sdsuOpenChannelProblems = new PublishedDocument(
  "San Diego State University, CIVE 530, open-channel hydraulics, midterm solutions",
  "fall 2005",
  "read",
);
