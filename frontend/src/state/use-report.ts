import type { Report } from '@ebbline/shared/contract/report';
import { fail } from '@ebbline/shared/errors/result';
import type { ReportWish } from '../api/report';
import { readReport } from '../api/report';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** A shift that still runs is asked for anew so often. ms */
export const reportEveryMs = 60_000;

/** The report of a period. @param wish null while the time in force is not known */
export const useReport = (
  wish: () => ReportWish | null,
  read: (wish: ReportWish) => ReturnType<typeof readReport> = readReport,
): Polled<Report> =>
  usePolled(
    () => {
      const wanted = wish();
      if (wanted === null) return Promise.resolve(fail({ code: 'READING_NOT_SENT', message: 'nothing was asked for' }));
      return read(wanted);
    },
    {
      of: () => {
        const wanted = wish();
        return wanted === null ? null : JSON.stringify(wanted);
      },
      everyMs: reportEveryMs,
    },
  );
