export declare function moveInlineScripts(
  html: string,
  folder: string,
): { page: string; files: Map<string, string> };
export declare function refusedByPolicy(html: string): string[];
