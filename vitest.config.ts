import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { alias: { "@": import.meta.dirname } },
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // One core is left free by default, which on a machine of two means one file at a time.
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        test: {
          name: "plain",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/browser/**", "tests/server/**", "node_modules/**"],
        },
      },
      {
        extends: true,
        test: {
          // A project of its own, so that a database server is started only for tests that need one.
          name: "server",
          include: ["tests/server/**/*.test.ts"],
          globalSetup: ["tests/support/postgres-for-tests.mjs"],
        },
      },
    ],
  },
});
