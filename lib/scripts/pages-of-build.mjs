import { readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";

/**
 * Every page that a build made ahead of time: its file and, for those with an address of their own, the address.
 *
 * Shape   next: the build's folder. The pages for errors and for addresses that lead nowhere have no address.
 */
export function pagesOfBuild(next) {
  return ["app", "pages"].flatMap((part) => {
    const folder = join(next, "server", part);
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith(".html"))
      .map((entry) => {
        const file = join(entry.parentPath, entry.name);
        const path = relative(folder, file).split(sep).join("/").slice(0, -".html".length);
        const isOwn = part === "app" && !path.startsWith("_");
        return { file, address: isOwn ? (path === "index" ? "/" : `/${path}`) : undefined };
      });
  });
}
