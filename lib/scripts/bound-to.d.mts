export function boundTo(host: string): "loopback" | "network";
export function addressesOf(host: string, port: number): string[];
