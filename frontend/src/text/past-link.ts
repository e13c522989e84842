/** Address of a past second of a unit, or of a hall where there is no unit; null where neither is known. */
export function pastLink(
  of: { readonly unit?: string | null | undefined; readonly hall?: string | null | undefined },
  at: string,
): PastLink | null {
  const query = { at: toSecond(at) };
  if (of.unit !== null && of.unit !== undefined) return { name: 'past-loop', params: { unit: of.unit }, query };
  if (of.hall !== null && of.hall !== undefined) return { name: 'past-hall', params: { hall: of.hall }, query };
  return null;
}

export type PastLink =
  | { readonly name: 'past-loop'; readonly params: { unit: string }; readonly query: { at: string } }
  | { readonly name: 'past-hall'; readonly params: { hall: string }; readonly query: { at: string } };

/** `2026-03-01T12:00:07.423Z` → `2026-03-01T12:00:07Z`: a past second is shown whole, and addresses stay short. */
export const toSecond = (iso: string): string => iso.replace(/\.\d+(?=Z$)/, '');
