/** The first free port from `from` on, on that host. */
export function freePort(from: number, host: string): Promise<number>;
