import type { TriedSettings } from '@ebbline/shared/contract/alarm-settings';
import type { Site } from '@ebbline/shared/contract/http-api';
import type { StartTrialRequest } from '@ebbline/shared/contract/limit-trial';

/** As many as one trial takes. */
export const mostUnits = 500;

export const trialLengths = [
  { label: '24 h', seconds: 86_400 },
  { label: '7 d', seconds: 604_800 },
  { label: '30 d', seconds: 2_592_000 },
] as const;

export interface Period {
  readonly from: string;
  readonly to: string;
}

/** The last so many seconds before a moment. */
export const lastOf = (seconds: number, now: string): Period => ({
  from: new Date(Date.parse(now) - seconds * 1000).toISOString(),
  to: new Date(Date.parse(now)).toISOString(),
});

/** Units a trial begins with: the one that was come from, else those of the first hall, as many as can be. */
export function firstUnits(site: Site | null, unit: string | null): readonly string[] {
  if (unit !== null) return [unit];
  return (site?.halls[0]?.units ?? []).slice(0, mostUnits);
}

/** The wish behind a filled form; null while something is missing. */
export function trialWish(
  entry: string,
  units: readonly string[],
  period: Period | null,
  proposed: TriedSettings | null,
): StartTrialRequest | null {
  if (units.length === 0 || units.length > mostUnits || period === null || proposed === null) return null;
  if (Object.keys(proposed).length === 0) return null;
  return { entry, units: [...units], ...period, proposed };
}
