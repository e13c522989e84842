import { dayMs, hourMs } from '../history-query';
import type { SealedFile } from './manifest';

export interface Retention {
  readonly rawDays: number;
  readonly rawBytes: number;
  readonly minuteDays: number;
}

/** Seven days or 10 GB of seconds, two years of minutes. */
export const defaultRetention: Retention = { rawDays: 7, rawBytes: 10e9, minuteDays: 730 };

export interface Expired {
  readonly files: readonly SealedFile[];
  /** Seconds before this are gone, or null where nothing of them goes. */
  readonly retireBeforeMs: number | null;
}

/** Whole files only, and for their age only by `agedAtMs`: hours of seconds that are too old, then the oldest while there are too many bytes; days of minutes. */
export function expiredFiles(kept: readonly SealedFile[], agedAtMs: number, retention: Retention): Expired {
  const seconds = kept.filter((file) => file.kind === 'seconds');
  const hourOf = (file: SealedFile): number => file.startMs - (file.startMs % hourMs);
  const hours = [...new Set(seconds.map(hourOf))].sort((a, b) => a - b);
  let bytes = seconds.reduce((sum, file) => sum + file.bytes, 0);
  let retireBeforeMs: number | null = null;
  for (const hour of hours) {
    const tooOld = hour + hourMs <= agedAtMs - retention.rawDays * dayMs;
    if (!tooOld && bytes <= retention.rawBytes) break;
    retireBeforeMs = hour + hourMs;
    bytes -= seconds.filter((file) => hourOf(file) === hour).reduce((sum, file) => sum + file.bytes, 0);
  }
  const files = kept.filter((file) =>
    file.kind === 'seconds'
      ? retireBeforeMs !== null && file.startMs < retireBeforeMs
      : file.startMs - (file.startMs % dayMs) + dayMs <= agedAtMs - retention.minuteDays * dayMs,
  );
  return { files, retireBeforeMs };
}

/** Of what has expired that which ends before the oldest hour of which rows wait to be sealed: they still need the seconds of that hour. */
export function expiredBefore(waitingHourMs: number, { files, retireBeforeMs }: Expired): Expired {
  const endOf = ({ kind, startMs }: SealedFile): number => {
    const wholeMs = kind === 'seconds' ? hourMs : dayMs;
    return startMs - (startMs % wholeMs) + wholeMs;
  };
  const gone = files.filter((file) => endOf(file) <= waitingHourMs);
  const hasSeconds = gone.some(({ kind }) => kind === 'seconds');
  return {
    files: gone,
    retireBeforeMs: hasSeconds && retireBeforeMs !== null ? Math.min(retireBeforeMs, waitingHourMs) : null,
  };
}
