/**
 * What a page may load and do; everything else is refused.
 *
 * No 'unsafe-inline' and no nonces: pages are made once, at build time, and the step after the build moves their inline scripts
 * into files of their own. A style attribute in a page that was made at build time is refused too; React sets styles through the
 * object model, which no policy touches.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
].join("; ");

/** Features of a browser that no screen uses; granted to nobody, embedded pages included. */
const UNUSED_FEATURES = ["camera", "microphone", "payment", "usb"];

/**
 * Features that our own pages use: a phone records how the car shakes, at the speed that it is told. Browsers give out no motion
 * at all where the gyroscope is refused (W3C Device Orientation and Motion), though its readings are not looked at.
 */
const OWN_FEATURES = ["accelerometer", "geolocation", "gyroscope"];

/** Headers of every answer of the server, pages and files alike. */
export const RESPONSE_HEADERS: readonly { readonly key: string; readonly value: string }[] = [
  { key: "Content-Security-Policy", value: CONTENT_SECURITY_POLICY },
  { key: "X-Content-Type-Options", value: "nosniff" },
  // Addresses name cases: no other site needs to learn them.
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
  {
    key: "Permissions-Policy",
    value: [
      ...UNUSED_FEATURES.map((name) => `${name}=()`),
      ...OWN_FEATURES.map((name) => `${name}=(self)`),
    ].join(", "),
  },
];
