import type { NextConfig } from "next";
import { RESPONSE_HEADERS } from "./app/headers/response-headers.ts";

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  // The embedded database comes as a binary beside its script: Node loads it, it is not bundled.
  serverExternalPackages: ["libsql"],
  // Two pages look the whole knowledge through; on a slow or busy machine that takes more than the minute allowed by default.
  staticPageGenerationTimeout: 300,
  headers: async () => [{ source: "/:path*", headers: [...RESPONSE_HEADERS] }],
};

export default config;
