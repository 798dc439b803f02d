import type { NextConfig } from "next";
import { RESPONSE_HEADERS } from "./app/headers/response-headers.ts";

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  // The embedded database and what decodes photos come as binaries beside their scripts: Node loads them, they are not bundled.
  serverExternalPackages: ["libsql", "sharp"],
  // Two pages look the whole knowledge through; on a slow or busy machine that takes more than the minute allowed by default.
  staticPageGenerationTimeout: 300,
  headers: async () => [{ source: "/:path*", headers: [...RESPONSE_HEADERS] }],
};

export default config;
