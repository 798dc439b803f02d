import type { MetadataRoute } from "next";

/** What a device needs to know to install the app. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: "/",
    name: "Cornerwise",
    short_name: "Cornerwise",
    description: "From a car's clunk, shake or pull to the one part behind it, and the proof.",
    lang: "en-GB",
    start_url: "/",
    scope: "/",
    display: "standalone",
    // Those of the light sheet; browsers take the dark one from the pages.
    background_color: "#f7f5ef",
    theme_color: "#f7f5ef",
    icons: [
      { src: "/icons/icon-192.png", sizes: "192x192", type: "image/png" },
      { src: "/icons/icon-512.png", sizes: "512x512", type: "image/png" },
      { src: "/icons/icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
    ],
  };
}
