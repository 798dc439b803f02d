/** What is wrong with a version of Node, with the remedy; undefined when it will do. */
export function nodeProblem(version?: string): string | undefined;
