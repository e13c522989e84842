const quote = 0x22;
const backslash = 0x5c;

/** Deepest nesting of objects and arrays that is read. Real payloads have three or four. */
export const maximumJsonDepth = 16;

/** Whether brackets outside texts nest deeper than `limit`; counted on the bytes, before anything is built from them. */
export function isDeeperThan(bytes: Uint8Array, limit: number): boolean {
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
