/**
 * Whether an address, as a socket states it, is this machine's own: 127.0.0.0/8, ::1, or the first written in IPv6.
 *
 * Source  RFC 6890: 127.0.0.0/8 and ::1/128 are the loopback ranges; RFC 4291, 2.5.5.2: IPv4-mapped addresses.
 */
export function isLoopbackAddress(address: string): boolean {
  const plain = address.replace(/^::ffff:/i, "");
  return plain === "::1" || /^127(\.\d{1,3}){3}$/.test(plain);
}

/**
 * Whether a Host header, or the host of a URL, names this machine, with or without a port.
 *
 * A page elsewhere whose name was made to lead here sends its own name: it is not one of these.
 */
export function isLoopbackHost(host: string): boolean {
  return /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d{1,5})?$/i.test(host);
}
