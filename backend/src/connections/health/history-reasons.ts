import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { HistoryHealth, PutAside } from '../../ports/history-store';

/** What is to be told of history: that its store takes nothing, that rows are still to be filled in, that some are lost, or a file damaged. */
export function historyReasons(history: HistoryHealth): readonly HealthFinding[] {
  const aside = history.putAside ?? null;
  const lost = history.losses ?? [];
  return [
    ...whileFailing(history, aside),
    ...lost.map((message) => ({ code: 'HISTORY_ROWS_LOST' as const, message })),
    ...ofDamage(history.damaged ?? null),
  ];
}

function whileFailing({ state, message }: HistoryHealth, aside: PutAside | null): readonly HealthFinding[] {
  const waiting = aside === null ? '' : ` ${waitingText(aside)}`;
  if (state === 'failing') {
    const why = message ?? 'the store gives no reason';
    return [{ code: 'HISTORY_FAILING', message: `History is not written: ${why}. It is tried again.${waiting}` }];
  }
  return aside === null
    ? []
    : [{ code: 'HISTORY_BEHIND', message: `History is being filled in, oldest first. ${waitingText(aside)}` }];
}

const ofDamage = (damaged: string | null): readonly HealthFinding[] =>
  damaged === null ? [] : [{ code: 'HISTORY_DAMAGED', message: `A part of history can't be read: ${damaged}.` }];

const waitingText = ({ rows, bytes, limitBytes, sinceMs }: PutAside): string =>
  `${rows} rows from ${new Date(sinceMs).toISOString()} on wait on the disk: ${megabytes(bytes)} of at most ${megabytes(limitBytes)}.`;

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
