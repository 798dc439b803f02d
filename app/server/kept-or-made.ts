/** What is kept under a key, made when it is not there; beyond `most` the one that was not used for longest goes. */
export function keptOrMade<T>(map: Map<string, T>, key: string, most: number, make: () => T): T {
  const value = map.get(key) ?? make();
  map.delete(key);
  map.set(key, value);
  const [oldest] = map.keys();
  if (map.size > most && oldest !== undefined) map.delete(oldest);
  return value;
}
