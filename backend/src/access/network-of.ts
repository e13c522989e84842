/**
 * What is counted as one station: an IPv4 address, or the /64 of an IPv6 address, since whoever has one
 * of these has all (RFC 4291 section 2.5.4; RFC 6177 section 2). What is no IPv6 address is given back as it is.
 */
export function networkOf(station: string): string {
  const address = station.replace(/%.*$/, '').toLowerCase();
  if (!/^[0-9a-f:]*:[0-9a-f:]*(\d+\.\d+\.\d+\.\d+)?$/.test(address)) return station;
  const [head = '', tail] = address.split('::');
  const before = groupsOf(head);
  const after = groupsOf(tail ?? '');
  const zeros = tail === undefined ? 0 : Math.max(0, 8 - before.length - after.length);
  return `${[...before, ...Array<string>(zeros).fill('0'), ...after].slice(0, 4).join(':')}::/64`;
}

/** Groups without leading zeros (RFC 5952 section 4.1); an IPv4 address at the end stands for two, which lie beyond the /64. */
const groupsOf = (text: string): string[] =>
  text === ''
    ? []
    : text.split(':').flatMap((group) => (group.includes('.') ? ['', ''] : [group.replace(/^0+(?=.)/, '')]));
