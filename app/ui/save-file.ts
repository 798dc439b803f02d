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
