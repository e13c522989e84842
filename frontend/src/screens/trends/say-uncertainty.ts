import type { PastUncertainty } from '@ebbline/shared/contract/trends';
import type { OverSpan } from '../../state/use-over-span';
import { formatMoment } from '../../text/format-time';
import type { UncertaintyTrack } from './uncertainty-at';

/** What is worked out of each point, by `unit:point`. */
export const tracksOf = (found: readonly PastUncertainty[] | null): ReadonlyMap<string, UncertaintyTrack> =>
  new Map(
    (found ?? []).flatMap(({ moments, points, unit }) =>
      points.map(({ expandedUncertainty, point }) => [
        `${unit}:${point}`,
        { seconds: moments.map((iso) => Date.parse(iso) / 1000), expanded: expandedUncertainty },
      ]),
    ),
  );

/** What a person has to know of the bands, in sentences. @param titleOf name of a point by `unit:point` */
export function sayUncertainty(
  { busy, found, problem }: OverSpan<readonly PastUncertainty[]>,
  titleOf: (key: string) => string,
  zone: string,
): readonly string[] {
  if (problem !== null) return [`Uncertainty of the past could not be worked out: ${problem}`];
  if (found === null) return [busy ? 'Working out from what was measured how sure the past values were…' : ''];
  const moments = Math.max(0, ...found.map((one) => one.moments.length));
  const pending = Math.max(0, ...found.map((one) => one.pending));
  const minutes = found.flatMap(({ minutesBefore }) => minutesBefore ?? []).sort();
  const unknown = found.flatMap(({ points, unit }) =>
    points
      .filter(({ expandedUncertainty }) => expandedUncertainty.every((value) => value === null))
      .map(({ point }) => titleOf(`${unit}:${point}`)),
  );
  const newest = minutes.at(-1);
  return [
    `Dotted: uncertainty of a single value (k = 2) about the mean, worked out anew at ${moments} moments of the period from what was measured, straight between them.`,
    ...(pending === 0 ? [] : [`${pending} of them are still being worked out…`]),
    ...(newest === undefined
      ? []
      : [
          `Before ${formatMoment(newest, zone)} only minutes are kept, from which it can’t be worked out: no band is drawn there.`,
        ]),
    ...(unknown.length === 0 || pending > 0
      ? []
      : [`Not known of ${unknown.join(', ')} in this period: an input was missing or bad, or states no accuracy.`]),
  ];
}
