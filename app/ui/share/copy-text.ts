/** Copies a text; gives what to say of it. `byHand` says how, where the browser does not let it. */
export async function copyText(text: string, byHand: string): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return "Copied.";
  } catch {
    return `It could not be copied by itself: ${byHand}.`;
  }
}

/** For a field above the button, as `byHand`. */
export const FROM_THE_FIELD = "hold the field above and copy it from there";
