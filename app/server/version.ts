import library from "../../lib/package.json" with { type: "json" };

/** Version of the program. */
export const VERSION: string = library.version;
