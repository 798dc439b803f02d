import { expect, test } from "vitest";
import { readingEase } from "../../lib/maths/reading-ease.ts";

/* Published worked values of Flesch's formula, as encyclopaedias give them; from memory. */

test("the cat on the mat scores 116", () => {
  expect(readingEase("The cat sat on the mat.")).toBeCloseTo(116, 0);
});

test("a sentence of 13 words and 24 spoken syllables scores 37.5, as near as counting vowels comes", () => {
  const sentence = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.";
  // A group of vowels that is spoken as two syllables is counted once; two of them are 13 points here.
  expect(Math.abs(readingEase(sentence) - 37.5)).toBeLessThan(2 * (84.6 / 13) + 0.1);
});

test("silent endings are not counted, heard ones are", () => {
  const syllables = (word: string): number => Math.round((206.835 - 1.015 - readingEase(word)) / 84.6);
  expect(["make", "makes", "walked", "tyre"].map(syllables)).toEqual([1, 1, 1, 1]);
  expect(["little", "needed", "noises", "steering"].map(syllables)).toEqual([2, 2, 2, 2]);
});
