import { parseSync } from "@swc/core";

/** What a pure file may not reach for: clock, randomness, environment, screen, network, timers. */
const FORBIDDEN_GLOBALS = new Set([
  ..."process console document window globalThis self navigator location localStorage sessionStorage".split(
    " ",
  ),
  ..."indexedDB fetch XMLHttpRequest WebSocket Worker Buffer require setTimeout setInterval setImmediate".split(
    " ",
  ),
  ..."requestAnimationFrame performance crypto __dirname __filename".split(" "),
]);
const FORBIDDEN_MEMBERS = new Map([
  ["Date", new Set(["now"])],
  ["Math", new Set(["random"])],
]);

type Node = { readonly type?: string } & Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => value !== null && typeof value === "object";
const nameOf = (node: unknown): string | undefined =>
  isNode(node) && node.type === "Identifier" && typeof node.value === "string" ? node.value : undefined;

/**
 * Names of impure things that TypeScript source reaches for, by its syntax tree.
 *
 * Comments, text and property names do not count; a local variable named like a global does.
 */
export function impureUses(source: string): string[] {
  const found: string[] = [];
  visit(parseSync(source, { syntax: "typescript", target: "es2022" }), found);
  return found;
}

function visit(node: unknown, found: string[]): void {
  if (Array.isArray(node)) {
    for (const child of node) visit(child, found);
    return;
  }
  if (!isNode(node)) return;
  if (typeof node.type === "string" && node.type.startsWith("Ts") && isTypeOnly(node.type)) return;
  const name = nameOf(node);
  if (name !== undefined && FORBIDDEN_GLOBALS.has(name)) found.push(name);
  if (node.type === "MetaProperty" && node.kind === "import.meta") found.push("import.meta");
  if (node.type === "NewExpression" && nameOf(node.callee) === "Date" && isEmpty(node.arguments)) {
    found.push("new Date()");
  }
  if (node.type === "CallExpression" && nameOf(node.callee) === "Date") found.push("Date()");
  if (node.type === "MemberExpression") {
    visitMember(node, found);
    return;
  }
  for (const [key, child] of Object.entries(node)) {
    // Keys of objects and classes, names of imports: not references.
    if (key === "key" && nameOf(child) !== undefined) continue;
    if (key === "imported" || key === "span") continue;
    visit(child, found);
  }
}

function visitMember(node: Node, found: string[]): void {
  const object = nameOf(node.object);
  const property = nameOf(node.property);
  if (object !== undefined && property !== undefined && FORBIDDEN_MEMBERS.get(object)?.has(property)) {
    found.push(`${object}.${property}`);
  }
  visit(node.object, found);
  if (isNode(node.property) && node.property.type === "Computed") visit(node.property, found);
}

function isEmpty(list: unknown): boolean {
  return !Array.isArray(list) || list.length === 0;
}

/** Nodes that are gone once types are stripped; expressions such as `x as T` are not among them. */
function isTypeOnly(type: string): boolean {
  return !/^Ts(As|NonNull|Satisfies|ConstAssertion|TypeAssertion|Instantiation|ParameterProperty)/.test(type);
}
