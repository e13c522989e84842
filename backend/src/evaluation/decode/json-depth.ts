const quote = 0x22;
const backslash = 0x5c;

/** Deepest nesting of objects and arrays that is read. Real payloads have three or four. */
export const maximumJsonDepth = 16;

/** Whether brackets outside texts nest deeper than `limit`; counted before anything is built from them. */
export const isDeeperThan = (bytes: Uint8Array, text: string, limit: number): boolean =>
  hasMoreThan(text, limit) && nestsDeeperThan(bytes, limit);

/** Whether the text has more opening brackets than `limit` at all: most have not, and to search costs less than to count depth. */
function hasMoreThan(text: string, limit: number): boolean {
  let found = 0;
  for (const bracket of ['{', '[']) {
    for (let at = text.indexOf(bracket); at >= 0; at = text.indexOf(bracket, at + 1)) {
      found += 1;
      if (found > limit) return true;
    }
  }
  return false;
}

function nestsDeeperThan(bytes: Uint8Array, limit: number): boolean {
  let depth = 0;
  let inText = false;
  for (let i = 0; i < bytes.length; i += 1) {
    const byte = bytes[i];
    if (inText) {
      if (byte === backslash) i += 1;
      else if (byte === quote) inText = false;
    } else if (byte === quote) {
      inText = true;
    } else if (byte === 0x7b || byte === 0x5b) {
      depth += 1;
      if (depth > limit) return true;
    } else if (byte === 0x7d || byte === 0x5d) {
      depth -= 1;
    }
  }
  return false;
}
