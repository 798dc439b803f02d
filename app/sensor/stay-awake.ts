/** Keeps the screen on, where the browser can, until the function that comes back is called. */
export function stayAwake(): () => void {
  let over = false;
  let lock: WakeLockSentinel | undefined;
  const take = (): void => {
    if (over || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    navigator.wakeLock.request("screen").then(
      (got) => {
        lock = got;
        if (over) void got.release();
      },
      () => undefined, // a low battery may refuse it; a screen that goes off shows as a gap in the recording
    );
  };
  // The browser lets go of it whenever the page is out of sight.
  document.addEventListener("visibilitychange", take);
  take();
  return () => {
    over = true;
    document.removeEventListener("visibilitychange", take);
    void lock?.release();
  };
}
