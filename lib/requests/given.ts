/** Whether a field of a request was filled: null counts as left out. */
export function given<T>(value: T | null | undefined): value is T {
  return value !== undefined && value !== null;
}
