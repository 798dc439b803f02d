/** Fields of a form from its draft, as typed; anything odd is an empty form. */
export function fieldsOfDraft(draft: string): Readonly<Record<string, string>> {
  if (draft === "") return {};
  try {
    const parsed: unknown = JSON.parse(draft);
    if (parsed === null || typeof parsed !== "object") return {};
    return Object.fromEntries(
      Object.entries(parsed).filter((pair): pair is [string, string] => typeof pair[1] === "string"),
    );
  } catch {
    return {};
  }
}
