/** Every breach of the layers in a folder tree, in words. */
export function layerProblems(folders?: readonly string[]): {
  readonly problems: readonly string[];
  readonly modules: number;
};
