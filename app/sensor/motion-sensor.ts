/** Asks for the motion sensor where the platform wants to be asked; others have no such function. */
type Asking = typeof DeviceMotionEvent & { readonly requestPermission?: () => Promise<"granted" | "denied"> };

/** Why this page can have no motion sensor, in words; undefined when nothing speaks against trying. */
export function whyNoMotion(): string | undefined {
  if (!window.isSecureContext)
    return "This page came over plain http, and browsers give no motion sensor to such pages. Open it by https, or take in a recording from a file.";
  if (typeof DeviceMotionEvent === "undefined")
    return "This browser knows of no motion sensor. Use a phone, or take in a recording from a file.";
  return undefined;
}

/** Has the sensor allowed; must be called by a tap. Throws in words when it is refused. */
export async function allowMotion(): Promise<void> {
  const { requestPermission } = DeviceMotionEvent as Asking;
  if (requestPermission === undefined) return;
  // Called on its owner: the platform refuses it otherwise.
  const said = await requestPermission.call(DeviceMotionEvent).catch(() => "denied");
  if (said !== "granted")
    throw new Error(
      "The motion sensor was refused. Allow motion for this site in the browser's settings, load the page again and start once more.",
    );
}

/** What the sensor says at one time: seconds, and acceleration along x, y and z in m/s^2. */
export type Motion = readonly [seconds: number, x: number, y: number, z: number];

/**
 * Listens until the function that comes back is called.
 *
 * With gravity where there is a choice: that is what the sensor itself says, while the other is worked out from it and smoothed.
 */
export function listenToMotion(onMotion: (motion: Motion) => void): () => void {
  let last = Number.NEGATIVE_INFINITY;
  const heard = (event: DeviceMotionEvent): void => {
    const { x, y, z } = event.accelerationIncludingGravity ?? {};
    const own = event.acceleration;
    const [a, b, c] = typeof x === "number" ? [x, y, z] : [own?.x, own?.y, own?.z];
    // A machine without a sensor says so by an event that holds nothing.
    if (typeof a !== "number" || typeof b !== "number" || typeof c !== "number") return;
    const seconds = event.timeStamp / 1000;
    if (seconds <= last) return;
    last = seconds;
    onMotion([seconds, a, b, c]);
  };
  window.addEventListener("devicemotion", heard);
  return () => window.removeEventListener("devicemotion", heard);
}
