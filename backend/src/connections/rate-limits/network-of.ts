import { isIPv6 } from 'node:net';

/**
 * What is counted as one station: an IPv4 address, or the /64 of an IPv6 address, since whoever has one
 * of these has all (RFC 4291 section 2.5.4; RFC 6177 section 2).
 */
export function networkOf(station: string): string {
  const address = station.replace(/%.*$/, '');
  if (!isIPv6(address)) return station;
  // The URL parser writes an IPv6 address in its shortest form (WHATWG URL, section 3.5), whatever form it had.
  const [head = '', tail] = new URL(`http://[${address}]/`).hostname.slice(1, -1).split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === undefined || tail === '' ? [] : tail.split(':');
  const zeros = tail === undefined ? 0 : 8 - before.length - after.length;
  return `${[...before, ...Array<string>(zeros).fill('0'), ...after].slice(0, 4).join(':')}::/64`;
}
