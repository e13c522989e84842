import { parseQuantity, type WrittenQuantity } from '@ebbline/shared/contract/site-file-quantity';

/** A quantity that the schema has checked already → SI (°C for temperatures); null where the key is left out. */
export function siOrNull(text: string | undefined, kind: WrittenQuantity): number | null {
  if (text === undefined) return null;
  const parsed = parseQuantity(text, kind);
  return parsed.ok ? parsed.value : null;
}

export const siOr = (text: string | undefined, kind: WrittenQuantity, otherwise: number): number =>
  siOrNull(text, kind) ?? otherwise;
