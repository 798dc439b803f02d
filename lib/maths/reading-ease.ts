/**
 * Flesch's reading ease of a text (R. Flesch, "A new readability yardstick", 1948; formula from memory): 100 is very easy,
 * 60 plain, 30 hard; short words in short sentences score above 100.
 *
 * Syllables are counted by groups of vowels, a silent "e" at the end left out: near enough for an average over many texts.
 * Errors  none: a text without a word gives NaN.
 */
export function readingEase(text: string): number {
  const words = text.match(/[A-Za-z]+/g) ?? [];
  const sentences = (text.match(/[.?!]+(\s|$)/g) ?? []).length || 1;
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return 206.835 - 1.015 * (words.length / sentences) - 84.6 * (syllables / words.length);
}

/** Vowel groups, without the silent "e" of "make", "makes" and "walked"; that of "little" and "needed" is heard. */
function syllablesOf(word: string): number {
  const heard = word
    .toLowerCase()
    .replace(/(?<=[^laeiouy])e$|(?<=[^laeiouyscxzg])es$|(?<=[^aeiouytd])ed$/, "");
  return Math.max(1, (heard.match(/[aeiouy]+/g) ?? []).length);
}
