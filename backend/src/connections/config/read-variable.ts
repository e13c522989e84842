/** A variable that can't be used: which one, and what it should be. Never what it is. */
export interface Fault {
  readonly variable: string;
  readonly message: string;
}

/** A TCP port, 0 to 65535; 0 takes a free one. */
export function readPort(variable: string, text: string | undefined, otherwise: number, faults: Fault[]): number {
  if (text === undefined) return otherwise;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port <= 65535) return port;
  faults.push({ variable, message: 'must be a port: a whole number from 0 to 65535' });
  return otherwise;
}

/** A host name or an address, without scheme, port or path. */
export function readHost(variable: string, text: string | undefined, otherwise: string, faults: Fault[]): string {
  if (text === undefined) return otherwise;
  if (/^[A-Za-z0-9.:_-]{1,253}$/.test(text)) return text;
  faults.push({ variable, message: 'must be a host name or an address, such as 127.0.0.1' });
  return '';
}

/** A URL with one of the schemes; null where the variable is not set. */
export function readUrl(
  variable: string,
  text: string | undefined,
  schemes: readonly string[],
  faults: Fault[],
): string | null {
  if (text === undefined) return null;
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url !== null && schemes.includes(url.protocol) && url.hostname !== '') {
    if (isDecodable(url)) return text;
    faults.push({
      variable,
      message: 'has a % that is not followed by two hex digits of UTF-8; write % itself as %25',
    });
    return null;
  }
  faults.push({
    variable,
    message: `must be a URL such as ${schemes[0] ?? ''}//host:port (schemes: ${schemes.join(' ')})`,
  });
  return null;
}

/** Name, password and path are percent-encoded in a URL (RFC 3986 section 2.1). */
function isDecodable({ username, password, pathname }: URL): boolean {
  try {
    [username, password, pathname].forEach(decodeURIComponent);
    return true;
  } catch {
    return false;
  }
}

export function readFlag(variable: string, text: string | undefined, otherwise: boolean, faults: Fault[]): boolean {
  if (text === undefined) return otherwise;
  if (text === 'on' || text === 'off') return text === 'on';
  faults.push({ variable, message: 'must be on or off' });
  return otherwise;
}

/** One of some words; the first where the variable is not set. */
export function readWord<Word extends string>(
  variable: string,
  text: string | undefined,
  words: readonly [Word, ...Word[]],
  faults: Fault[],
): Word {
  const found = text === undefined ? words[0] : words.find((word) => word === text);
  if (found !== undefined) return found;
  faults.push({ variable, message: `must be one of: ${words.join(', ')}` });
  return words[0];
}
