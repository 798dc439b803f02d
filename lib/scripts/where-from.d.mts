export function whereFrom(
  request: {
    readonly headers: Readonly<Record<string, string | string[] | undefined>>;
    readonly socket: { readonly remoteAddress?: string };
  },
  proxies: number,
): string;
