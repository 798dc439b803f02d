/** Control characters and halves of characters: the two databases keep or cut them each in its own way. */
const UNKEEPABLE = /[\p{Cc}\p{Cs}]/gu;

/** Text for a column of its own: what no column can hold becomes a space. The entry itself is kept as it came. */
export function columnText(text: string): string {
  return text.replaceAll(UNKEEPABLE, " ");
}

/** Text for searching: small letters without accents, one space between words. */
export function searchText(text: string): string {
  return columnText(text)
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/\s+/g, " ")
    .trim();
}
