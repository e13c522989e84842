/**
 * The encoding standard's decoder, the one global that this room uses: the same bytes give the same text
 * everywhere. A decoder written here would cost more than JSON.parse does.
 */
declare const TextDecoder: new (
  label: 'utf-8',
  options: { readonly fatal: true },
) => { decode(bytes: Uint8Array): string };

const decoder = new TextDecoder('utf-8', { fatal: true });

/** Bytes → text, or null where they are not UTF-8 (RFC 3629). A byte order mark is left out. */
export function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}
