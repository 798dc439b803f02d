/** Called by the framework when the server process starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { whenStarted } = await import("./app/server/when-started.ts");
  await whenStarted();
}
