import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { transformSync } from "@swc/core";

type Exports = Record<string, unknown>;

/**
 * Loads a source file and all that it imports, packages included, in a world that holds the language and nothing else.
 *
 * No process, console, timers, URL, TextEncoder, crypto, fetch, document: whoever reaches for one of them fails. Clock
 * and randomness throw.
 */
export function loadBare(file: string): Exports {
  const world = createContext({});
  runInContext(
    `delete globalThis.console;
     Date.now = Math.random = () => { throw new Error("the library reached for clock or randomness"); };
     Date = new Proxy(Date, { construct(target, args) {
       if (args.length === 0) throw new Error("the library reached for the clock");
       return Reflect.construct(target, args);
     } });`,
    world,
  );
  const loaded = new Map<string, { exports: Exports }>();
  const load = (path: string): Exports => {
    const kept = loaded.get(path);
    if (kept !== undefined) return kept.exports;
    const module = { exports: {} as Exports };
    loaded.set(path, module);
    const wrapped = `(function (module, exports, require) {${asCommonJs(path)}\n})`;
    const run = runInContext(wrapped, world, { filename: path }) as (...args: unknown[]) => void;
    run(module, module.exports, (name: string) => load(resolve(name, path)));
    return module.exports;
  };
  return load(file);
}

function asCommonJs(path: string): string {
  const source = readFileSync(path, "utf8");
  if (!path.endsWith(".ts") && !/^\s*(import|export)\b/m.test(source)) return source;
  return transformSync(source, {
    filename: path,
    jsc: { parser: { syntax: "typescript" }, target: "es2022" },
    module: { type: "commonjs" },
    swcrc: false,
  }).code;
}

function resolve(name: string, from: string): string {
  return name.startsWith(".") ? join(dirname(from), name) : createRequire(from).resolve(name);
}
