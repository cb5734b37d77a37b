import { describe, expect, test } from "vitest";
import {
  citationText,
  commonPractice,
  computedByHand,
  PublishedDocument,
  type PlaceInPrint,
  type Published,
} from "../../../functions/published/source.ts";

const handbook = new PublishedDocument("A Handbook of Examples", "3rd ed., 1999", "read");

describe("citations", () => {
  test("an edition of a document is cited by equation, table, example, chapter or any place", () => {
    const places = [
      handbook.equation("2-3"),
      handbook.table("2-1"),
      handbook.example("4"),
      handbook.chapter("2"),
      handbook.place("page 7"),
    ];
    expect(places.map(({ place }) => place)).toEqual(["equation 2-3", "table 2-1", "example 4", "chapter 2", "page 7"]);
    expect(places).toMatchObject(places.map(() => ({ document: "A Handbook of Examples", edition: "3rd ed., 1999", evidence: "read" })));
  });

  test("one place may be less surely known than the rest of its document", () => {
    expect(handbook.table("5", "from memory").evidence).toBe("from memory");
    expect(handbook.equation("5", "read in transcription").evidence).toBe("read in transcription");
    expect(handbook.example("5", "from memory").evidence).toBe("from memory");
    expect(handbook.chapter("5", "from memory").evidence).toBe("from memory");
  });

  test("a citation in words says where and how surely", () => {
    expect(citationText(handbook.table("2-1"))).toBe("A Handbook of Examples, 3rd ed., 1999, table 2-1 (read).");
    expect(citationText(handbook.table("2-1", "from memory"))).toBe(
      "A Handbook of Examples, 3rd ed., 1999, table 2-1 (from memory, check before use).",
    );
    expect(citationText(commonPractice("Two shovels a person"))).toBe("Two shovels a person (common practice, no source).");
    expect(citationText(computedByHand("12 in in a foot"))).toBe("12 in in a foot (computed by hand).");
  });

  test("a published value without document, edition and place does not type-check", () => {
    const complete: Published<number> = { values: 98, printedTo: 1, from: handbook.table("2-2a") };
    // @ts-expect-error A place without its edition is no citation.
    const noEdition: PlaceInPrint = { document: "A Handbook of Examples", place: "table 1", evidence: "read" };
    // @ts-expect-error Common practice has no place in print, so no published value may rest on it.
    const noDocument: Published<number> = { values: 98, printedTo: 1, from: commonPractice("Everybody says so") };
    // @ts-expect-error A published value says to which digit it was printed.
    const noPrecision: Published<number> = { values: 98, from: handbook.table("2-2a") };
    expect([complete, noEdition, noDocument, noPrecision]).toHaveLength(4);
  });
});
