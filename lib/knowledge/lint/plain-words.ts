/** The first of the words or turns of phrase that stands in the text, singular or plural, whole words only. */
export function firstOf(words: readonly string[], text: string): string | undefined {
  const plain = ` ${text.toLowerCase().replaceAll(/[^a-z0-9-]+/g, " ")} `;
  return words.find((word) => plain.includes(` ${word} `) || plain.includes(` ${word}s `));
}

/** The text without its sentences that say what not to do. */
export function withoutWarnings(text: string): string {
  return text
    .split(/(?<=[.?!:,])\s/)
    .filter((sentence) => !/\b(do not|don't|never|leave)\b/i.test(sentence))
    .join(" ");
}
