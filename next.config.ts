import type { NextConfig } from "next";

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  // Two pages look the whole knowledge through; on a slow or busy machine that takes more than the minute allowed by default.
  staticPageGenerationTimeout: 300,
};

export default config;
