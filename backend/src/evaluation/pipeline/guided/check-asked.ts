import type { GuidedAsked, GuidedGiven } from '@ebbline/shared/contract/guided-test';

/** What was typed, with what was left out as usual; or what is wrong with it. */
export type AskedOutcome =
  { readonly ok: true; readonly given: GuidedGiven } | { readonly ok: false; readonly message: string };

export function checkAsked(asks: readonly GuidedAsked[], given: GuidedGiven): AskedOutcome {
  const unknown = Object.keys(given).find((key) => asks.every((one) => one.key !== key));
  if (unknown !== undefined) return { ok: false, message: `nothing of the name ${unknown} is asked for here` };
  const taken: Record<string, number | string> = {};
  for (const asked of asks) {
    const value = given[asked.key] ?? asked.usual;
    const wrong = faultOf(asked, value);
    if (wrong !== null) return { ok: false, message: `${asked.title}: ${wrong}` };
    if (value !== null) taken[asked.key] = value;
  }
  return { ok: true, given: taken };
}

function faultOf({ kind, unit, least, most }: GuidedAsked, value: number | string | null): string | null {
  if (value === null) return 'has to be said';
  if (kind === 'text') return typeof value === 'string' && value.trim() !== '' ? null : 'has to be said in words';
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'has to be a number';
  if (least !== null && value < least) return `at least ${least} ${unit}`.trim();
  if (most !== null && value > most) return `at most ${most} ${unit}`.trim();
  return null;
}

/** What stands where nothing was chosen; what has to be said is left out. */
export const usualOf = (asks: readonly GuidedAsked[]): GuidedGiven =>
  Object.fromEntries(asks.flatMap(({ key, usual }) => (usual === null ? [] : [[key, usual]])));
