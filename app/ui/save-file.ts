/** Hands text to the browser as a file to be saved. */
export function saveFile(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Browsers read it after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** The same for a value as JSON, under a name without its ending. */
export function saveJson(name: string, value: unknown): void {
  saveFile(`${name}.json`, `${JSON.stringify(value, undefined, 2)}\n`, "application/json");
}
