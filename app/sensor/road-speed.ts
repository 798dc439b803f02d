const REFUSED =
  "The phone's place was refused, so there is no speed by GPS. Allow it in the browser's settings, or type the speed.";

/**
 * Watches the road speed (km/h) by GPS until the function that comes back is called.
 *
 * `onTrouble` is told in words why there is none, and undefined once there is one again.
 */
export function watchRoadSpeed(
  onSpeed: (kmh: number) => void,
  onTrouble: (words: string | undefined) => void,
): () => void {
  if (!("geolocation" in navigator)) {
    onTrouble("This browser gives no place, so there is no speed by GPS. Type the speed.");
    return () => undefined;
  }
  const watch = navigator.geolocation.watchPosition(
    ({ coords: { speed } }) => {
      if (speed === null || !Number.isFinite(speed) || speed < 0) {
        onTrouble("GPS gives a place but no speed so far. Wait for it, or type the speed.");
        return;
      }
      onTrouble(undefined);
      onSpeed(speed * 3.6);
    },
    ({ code, PERMISSION_DENIED }) =>
      onTrouble(
        code === PERMISSION_DENIED ? REFUSED : "GPS finds no place so far. Wait for it, or type the speed.",
      ),
    { enableHighAccuracy: true, maximumAge: 0 },
  );
  return () => navigator.geolocation.clearWatch(watch);
}
