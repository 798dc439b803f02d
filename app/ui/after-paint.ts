/** A page out of sight paints nothing; then this long is waited at most. Units: ms. */
const LONGEST = 60;

/** Runs once the next paint is made, so that a tap is seen to be taken before the work that it asks for. */
export function afterPaint(run: () => void): void {
  let done = false;
  const once = (): void => {
    if (done) return;
    done = true;
    run();
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, LONGEST);
}
