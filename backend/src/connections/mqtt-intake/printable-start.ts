/** How much of a payload is shown: enough to see what is wrong with it. */
const BYTES_SHOWN = 80;

/** The first bytes as text that can be shown anywhere: what is not printable ASCII becomes a dot. */
export function printableStart(payload: Uint8Array, bytes = BYTES_SHOWN): string {
  const start = Array.from(payload.subarray(0, bytes), (byte) =>
    byte >= 0x20 && byte < 0x7f ? String.fromCharCode(byte) : '.',
  );
  return start.join('') + (payload.length > bytes ? '…' : '');
}
