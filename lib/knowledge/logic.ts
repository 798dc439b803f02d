import jsonLogic from "json-logic-js";
import { CornerwiseError } from "../errors.ts";

/** Operators that a rule may use. Each works on its arguments alone; `var` and `missing` are read here, not by the interpreter. */
export const LOGIC_OPERATORS = [
  "var",
  "missing",
  "==",
  "!=",
  "!",
  "!!",
  "and",
  "or",
  "in",
  "<",
  "<=",
  ">",
  ">=",
  "if",
] as const;

/** Deepest nesting of a rule. */
export const LOGIC_DEPTH = 12;

/** Most values (operators, literals, list members) in a rule. */
export const LOGIC_NODES = 200;

const OPERATORS: ReadonlySet<string> = new Set(LOGIC_OPERATORS);
const PATH = /^[A-Za-z][A-Za-z0-9]*(\.[A-Za-z][A-Za-z0-9]*)*$/;

/** A rule that was checked, and what came of it for the values that it reads. */
interface Known {
  readonly paths: readonly string[];
  readonly steps: readonly (readonly string[])[];
  readonly results: Map<string, boolean>;
}

/**
 * Rules that were checked already: knowledge is never changed, and grounding evaluates each rule many times, mostly for
 * values that it was evaluated for before.
 */
const KNOWN = new WeakMap<object, Known>();
/** Results kept of a rule: one that reads an odometer would gather them without end. */
const MOST_RESULTS = 256;

type Scalar = string | number | boolean | null;

/**
 * Check that a JsonLogic rule uses only the operators allowed and is neither too deep nor too long.
 *
 * Returns the paths that it reads, without repeats.
 * Errors  "bad-logic" with the place in the rule.
 */
export function checkLogic(rule: unknown): string[] {
  const paths = new Set<string>();
  let nodes = 0;
  const walk = (value: unknown, where: string, depth: number): void => {
    nodes += 1;
    if (nodes > LOGIC_NODES)
      fail(where, `longer than ${LOGIC_NODES} values`, "Split the rule or say it shorter.");
    if (depth > LOGIC_DEPTH) fail(where, `deeper than ${LOGIC_DEPTH}`, "Say it with fewer nested operators.");
    if (isScalar(value)) return;
    if (Array.isArray(value)) {
      value.forEach((member, index) => {
        walk(member, `${where}.${index}`, depth + 1);
      });
      return;
    }
    if (typeof value !== "object" || value === null) {
      fail(
        where,
        `${typeof value} is no JSON value`,
        "Use text, a number, true, false, null, a list or a rule.",
      );
    }
    const [operator, args] = onlyEntry(value, where);
    if (operator === "var" || operator === "missing") {
      for (const path of pathsOf(operator, args, where)) paths.add(path);
      nodes += 1;
      return;
    }
    walk(args, `${where}.${operator}`, depth + 1);
  };
  walk(rule, "rule", 0);
  return [...paths];
}

/**
 * Whether a JsonLogic rule holds for the data.
 *
 * Only own properties of plain objects are read and only text, numbers and truth values come out; everything else is null,
 * as JsonLogic has it for a variable that is not there.
 * Errors  "bad-logic" as `checkLogic`.
 * Source  jsonlogic.com, operations; evaluated by json-logic-js.
 * @example evaluateLogic({ "==": [{ var: "front.layout" }, "strut"] }, { front: { layout: "strut" } }) // true
 */
export function evaluateLogic(rule: unknown, data: unknown): boolean {
  if (typeof rule === "boolean") return rule;
  const { steps, results } = knownRule(rule);
  let key = "";
  for (const path of steps) key += `${keyOf(read(data, path))}\n`;
  const kept = results.get(key);
  if (kept !== undefined) return kept;
  const closed = close(rule, data) as jsonLogic.RulesLogic;
  const holds = jsonLogic.truthy(jsonLogic.apply(closed, null));
  if (results.size >= MOST_RESULTS) results.clear();
  results.set(key, holds);
  return holds;
}

/**
 * The paths that a rule reads, without repeats; kept, so that asking again costs nothing.
 *
 * Errors  "bad-logic" as `checkLogic`.
 */
export function logicPaths(rule: unknown): readonly string[] {
  return knownRule(rule).paths;
}

function knownRule(rule: unknown): Known {
  const kept = typeof rule === "object" && rule !== null ? KNOWN.get(rule) : undefined;
  if (kept !== undefined) return kept;
  const paths = checkLogic(rule);
  const known = { paths, steps: paths.map((path) => path.split(".")), results: new Map() };
  if (typeof rule === "object" && rule !== null) KNOWN.set(rule, known);
  return known;
}

/** Tells apart what a rule can: 1 and "1", null and "null". No operator that is allowed tells 0 and -0 apart. */
function keyOf(value: Scalar): string {
  return typeof value === "string" ? `${value.length}:${value}` : String(value);
}

/** Put the data's values in place of `var` and `missing`, so that the interpreter never touches the data. */
function close(rule: unknown, data: unknown): unknown {
  if (isScalar(rule)) return rule;
  if (Array.isArray(rule)) return rule.map((member) => close(member, data));
  const [operator, args] = onlyEntry(rule as object, "rule");
  const list = Array.isArray(args) ? args : [args];
  if (operator === "var") return read(data, String(list[0]).split(".")) ?? list[1] ?? null;
  if (operator === "missing") return list.filter((path) => isBlank(read(data, String(path).split("."))));
  return { [operator]: list.map((arg) => close(arg, data)) };
}

function read(data: unknown, path: readonly string[]): Scalar {
  let value = data;
  for (const key of path) {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return null;
    if (!Object.hasOwn(value, key)) return null;
    value = (value as Record<string, unknown>)[key];
  }
  return isScalar(value) ? value : null;
}

/** JsonLogic's `missing` counts empty text as missing. */
function isBlank(value: Scalar): boolean {
  return value === null || value === "";
}

function isScalar(value: unknown): value is Scalar {
  if (typeof value === "number") return Number.isFinite(value);
  return value === null || typeof value === "string" || typeof value === "boolean";
}

function onlyEntry(value: object, where: string): [string, unknown] {
  const [entry, second] = Object.entries(value);
  if (entry === undefined || second !== undefined) {
    fail(where, "a rule is an object with exactly one operator", `Use one of: ${LOGIC_OPERATORS.join(" ")}.`);
  }
  if (!OPERATORS.has(entry[0])) {
    fail(where, `the operator "${entry[0]}" is not allowed`, `Use one of: ${LOGIC_OPERATORS.join(" ")}.`);
  }
  return entry;
}

function pathsOf(operator: "var" | "missing", args: unknown, where: string): string[] {
  const list: unknown[] = Array.isArray(args) ? args : [args];
  const named = operator === "var" ? list.slice(0, 1) : list;
  const fallback = operator === "var" ? list.slice(1) : [];
  if (list.length > LOGIC_NODES) fail(where, `longer than ${LOGIC_NODES} values`, "Name fewer paths.");
  if (fallback.length > 1 || !fallback.every(isScalar)) {
    fail(where, "var takes a path and at most one plain value to fall back on", "Remove the rest.");
  }
  if (named.length === 0) fail(where, `${operator} names no path`, 'Name a path, such as "front.layout".');
  return named.map((path) => {
    if (typeof path === "string" && PATH.test(path)) return path;
    return fail(
      where,
      `${operator} needs a path, not ${JSON.stringify(path)}`,
      'Use one such as "front.layout".',
    );
  });
}

function fail(where: string, what: string, mend: string): never {
  throw new CornerwiseError("bad-logic", `${where}: ${what}. ${mend}`, { where });
}
