import { createHash } from "node:crypto";

const SCRIPT = /<script\b([^>]*)>([\s\S]*?)<\/script>/g;

/** What stands next to each other runs in one go: then it may be one file. Attributes (an id) keep a script apart. */
const NEIGHBOURS = /(?:<script>[\s\S]*?<\/script>)+|<script\b[^>]*>[\s\S]*?<\/script>/g;

/**
 * A page whose inline scripts are files: the same scripts, in the same order, each at the place where it stood.
 *
 * They stay classic scripts without `async` or `defer`, so that the parser waits for them as it did for the inline ones.
 *
 * Shape   folder: address under which the files will be served, without a slash at its end.
 *         Returns the page and each file's text by its name; names are made from the text.
 */
export function moveInlineScripts(html, folder) {
  const files = new Map();
  const page = html.replace(NEIGHBOURS, (scripts) => {
    const [[, attributes]] = scripts.matchAll(SCRIPT);
    if (/\ssrc=/.test(attributes)) return scripts;
    const text = [...scripts.matchAll(SCRIPT)].map(([, , code]) => code).join(";\n");
    const name = `${createHash("sha256").update(text).digest("hex").slice(0, 20)}.js`;
    files.set(name, text);
    return `<script${attributes} src="${folder}/${name}"></script>`;
  });
  return { page, files };
}

/** What a page holds that `script-src 'self'` or `style-src 'self'` would refuse, in words; empty when it is nothing. */
export function refusedByPolicy(html) {
  const found = [];
  for (const [, attributes] of html.matchAll(SCRIPT)) {
    if (!/\ssrc=/.test(attributes)) found.push("an inline script");
  }
  // Text and attribute values have their < and > written as entities, so this meets tags only.
  for (const [tag] of html.replace(SCRIPT, "").matchAll(/<[a-z][^>]*>/gi)) {
    const attributes = tag.replace(/"[^"]*"/g, '""');
    const handler = /\s(on[a-z]+)=/i.exec(attributes)?.[1];
    if (handler !== undefined) found.push(`an attribute ${handler}`);
    if (/\sstyle=/i.test(attributes)) found.push("a style attribute");
    if (/^<style\b/i.test(tag)) found.push("a style element");
    if (/"\s*javascript:/i.test(tag)) found.push("an address that is a script");
  }
  return [...new Set(found)];
}
