import { expect, test } from "vitest";
import { bloomOf } from "../../../../taskpane/views/planting/bloom.ts";
import { bloomWords } from "../../../../taskpane/views/planting/bloom-strip.tsx";
import { marksOf } from "../../../../taskpane/views/planting/plant-marks.ts";
import { plantAt } from "../../../addin/actions/planting/plants-of-tests.ts";

const blooming = (name: string, ...bloomMonths: number[]) => ({ ...plantAt(1, name), bloomMonths });

test("a gap in bloom lies between the first bloom and the last, and is said in words", () => {
  const bloom = bloomOf([blooming("columbine", 4, 5), blooming("aster", 9, 10)]);
  expect(bloom.kindsByMonth).toEqual([0, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0]);
  expect(bloom.gaps).toEqual([6, 7, 8]);
  expect(bloomWords(bloom)).toEqual([
    "Something blooms from April to October. Nothing blooms in June, July and August.",
    "No bloom in summer: three seasons are common practice.",
  ]);
});

test("bloom without a gap through three seasons needs no more words", () => {
  expect(bloomWords(bloomOf([blooming("one", 4, 5, 6, 7), blooming("two", 7, 8, 9)]))).toEqual([
    "Something blooms from April to September. There is no gap between.",
  ]);
});

test("where no bloom is known, that is said, and of which plants", () => {
  expect(bloomWords(bloomOf([blooming("sword fern")]))).toEqual(["No bloom is known of these plants.", "Bloom not known: sword fern."]);
});

test("twenty-four kinds have twenty-four marks, so that none needs a color to be told apart", () => {
  const marks = [...marksOf(Array.from({ length: 24 }, (_, index) => `kind ${index}`)).values()];
  expect(new Set(marks.map(({ path, fill }) => `${path} ${fill}`)).size).toBe(24);
  expect(marks.map(({ number }) => number)).toEqual(Array.from({ length: 24 }, (_, index) => index + 1));
});
