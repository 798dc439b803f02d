import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { filesBelow, matchesGlob } from "../support/glob.ts";
import { impureUses } from "../support/impure-uses.ts";
import { layerProblems } from "../support/layers.mjs";

const ROOT = join(import.meta.dirname, "../..");
const FILES = filesBelow(ROOT);
const PURE = FILES.filter((path) => /^lib\/(?!store\/|cli\/|scripts\/|bin\/).*\.ts$/.test(path));

const read = (path: string): string => readFileSync(join(ROOT, path), "utf8");
const json = (path: string): unknown => JSON.parse(read(path).replaceAll(/^\s*\/\/.*$/gm, ""));

describe("the pure part of the library", () => {
  it("is where it is looked for", () => {
    for (const layer of ["maths", "knowledge", "car", "engine", "words", "case"]) {
      expect(PURE.filter((path) => path.startsWith(`lib/${layer}/`)).length, layer).toBeGreaterThan(2);
    }
  });

  it.each(PURE)("%s has no clock, randomness, environment or screen of its own", (path) => {
    expect(impureUses(read(path))).toEqual([]);
  });

  it.each([
    ["Date.now()", ["Date.now"]],
    ["const t = new Date();", ["new Date()"]],
    ["const t = new Date;", ["new Date()"]],
    ["f(Math.random)", ["Math.random"]],
    ["if (process.env.X) f();", ["process"]],
    ["console.log(1)", ["console"]],
    ["const w = (window as Window).innerWidth", ["window"]],
    ["const { body } = document;", ["document"]],
    ["const a = { process };", ["process"]],
    ["a[crypto]", ["crypto"]],
    ["globalThis['x']", ["globalThis"]],
    ["import.meta.url", ["import.meta"]],
    ["const f = require('x');", ["require"]],
  ])("the check sees %s", (source, found) => {
    expect(impureUses(source)).toEqual(found);
  });

  it.each([
    "// Date.now() and process.env",
    "const s = 'console.log(document)';",
    "const t = new Date(0).toISOString();",
    "const a = { process: 1 }; f(a.process, a.window);",
    "interface A { readonly document: string; window(): void }",
    "const n = Math.max(Date.UTC(2026, 0), 1);",
  ])("the check passes %s", (source) => {
    expect(impureUses(source)).toEqual([]);
  });
});

describe("the layers", () => {
  it("point downwards only, without circles, and every source was looked at", () => {
    const { problems, modules } = layerProblems();
    expect(problems).toEqual([]);
    expect(modules).toBeGreaterThan(PURE.length);
  });
});

interface OxlintConfig {
  readonly overrides: readonly { readonly files: readonly string[] }[];
}
interface CruiserConfig {
  readonly forbidden: readonly { readonly name: string; readonly from: { readonly path?: string } }[];
}
interface Package {
  readonly scripts: Readonly<Record<string, string>>;
  readonly bin?: Readonly<Record<string, string>>;
}

/** Globs that stand ready for a kind of file that need not exist. */
const MAY_BE_EMPTY = new Set(["tests/**/*.tsx"]);

describe("what configurations name", () => {
  const globs: [string, string][] = [
    ...(json(".oxlintrc.json") as OxlintConfig).overrides.flatMap(({ files }) =>
      files.map((glob): [string, string] => [".oxlintrc.json", glob]),
    ),
    ...(json("tsconfig.json") as { include: string[] }).include
      .filter((glob) => !/^(next-env|\.next)/.test(glob) && !MAY_BE_EMPTY.has(glob)) // made by next typegen
      .map((glob): [string, string] => ["tsconfig.json", glob]),
    ...["tests/**/*.test.ts", "tests/browser/**", "tests/server/**/*.test.ts"].map(
      (glob): [string, string] => ["vitest.config.ts", glob],
    ),
  ];

  it("has globs to look at", () => {
    expect(globs.length).toBeGreaterThan(8);
  });

  it.each(globs)("%s: %s matches a file", (_config, glob) => {
    expect(FILES.some((path) => matchesGlob(path, glob))).toBe(true);
  });

  it("is in vitest.config.ts as listed here", () => {
    expect(read("vitest.config.ts")).toContain('"tests/**/*.test.ts"');
    expect(read("vitest.config.ts")).toContain('"tests/browser/**"');
    expect(read("vitest.config.ts")).toContain('"tests/server/**/*.test.ts"');
  });

  const { forbidden } = createRequire(import.meta.url)(
    join(ROOT, ".dependency-cruiser.cjs"),
  ) as CruiserConfig;
  const paths = forbidden.flatMap(({ name, from }) =>
    from.path === undefined ? [] : [[name, from.path] as const],
  );

  it.each(paths)("layer rule %s: %s matches a file", (_name, path) => {
    expect(FILES.some((file) => new RegExp(path).test(file))).toBe(true);
  });

  it.each(["package.json", "lib/package.json"])(
    "%s: every file that a script or bin names is there",
    (path) => {
      const { scripts, bin = {} } = json(path) as Package;
      const named = [
        ...Object.values(scripts).flatMap((script) => script.match(/[\w./-]+\.(mjs|json|ts)\b/g) ?? []),
        ...Object.values(bin),
      ];
      expect(named.length).toBeGreaterThan(0);
      const folder = path.replace(/package\.json$/, "");
      for (const file of named) expect(FILES, file).toContain(`${folder}${file.replace(/^\.\//, "")}`);
    },
  );
});
