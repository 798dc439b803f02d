// Layers of the library, lowest first: a lower one never imports a higher one.
const LAYERS = [
  "maths",
  "knowledge",
  "car",
  "engine",
  "words",
  "case",
  "training",
  "requests",
  "store",
  "cli",
];
const IN_NODE = ["store", "cli", "scripts"];

const upwards = LAYERS.map((layer, index) => ({
  name: `lib-${layer}-looks-down-only`,
  comment: `lib/${layer} may import what stands below it, never what stands above.`,
  severity: "error",
  from: { path: `^lib/${layer}/` },
  to: { path: `^lib/(${[...LAYERS.slice(index + 1), "scripts"].join("|")})/|^lib/index\\.ts$` },
})).filter(({ from }) => from.path !== "^lib/cli/");

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...upwards,
    {
      name: "nothing-imports-app",
      comment: "The app is the top: only the app itself and the tests know it.",
      severity: "error",
      from: { pathNot: "^(app|tests)/|^instrumentation\\.ts$" },
      to: { path: "^app/" },
    },
    {
      name: "screens-know-the-server-by-its-types",
      comment:
        "What runs in a browser must not carry the server along; its types tell what the routes take and give.",
      severity: "error",
      from: { path: "^app/", pathNot: "^app/(server|api)/" },
      to: { path: "^app/server/", dependencyTypesNot: ["type-only"] },
    },
    {
      name: "nothing-imports-tests",
      severity: "error",
      from: { pathNot: "^tests/|^(playwright|vitest)\\.config\\.ts$" },
      to: { path: "^tests/" },
    },
    {
      name: "lib-without-screens",
      comment: "The library runs without React, Next and the browser's database.",
      severity: "error",
      from: { path: "^lib/" },
      to: { path: "(^|/)node_modules/(react|react-dom|next|idb)/" },
    },
    {
      name: "lib-without-node",
      comment: `Only lib/${IN_NODE.join(", lib/")} may use Node.`,
      severity: "error",
      from: { path: "^lib/", pathNot: `^lib/(${IN_NODE.join("|")}|bin)/` },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "store-has-its-own-door",
      comment: "The database is for servers: who takes the library into a browser must not get it along.",
      severity: "error",
      from: { path: "^lib/", pathNot: "^lib/(store|cli)/" },
      to: { path: "^lib/store/" },
    },
    {
      name: "store-on-the-server-only",
      comment: "Screens ask the server; only its own part of the app reads the database.",
      severity: "error",
      from: { path: "^app/", pathNot: "^app/(server|api)/" },
      to: { path: "^lib/store/" },
    },
    {
      name: "lib-uses-its-own-packages",
      comment: "The library is a package: what it imports stands in lib/package.json.",
      severity: "error",
      from: { path: "^lib/", pathNot: "^lib/scripts/" },
      to: {
        dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown", "unknown", "undetermined"],
        // An optional peer is named a second time, under peerDependenciesMeta, which counts as "no package".
        dependencyTypesNot: ["npm-peer"],
      },
    },
    {
      name: "lib-errors-is-the-bottom",
      severity: "error",
      from: { path: "^lib/errors\\.ts$" },
      to: { path: ".+" },
    },
    { name: "no-circles", severity: "error", from: {}, to: { circular: true } },
    { name: "no-dangling-import", severity: "error", from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)(dist|\\.next|release|reports|coverage)/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      extensions: [".ts", ".tsx", ".mjs", ".js", ".json"],
      exportsFields: ["exports"],
      conditionNames: ["import", "types", "default"],
    },
  },
};
