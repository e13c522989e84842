import type { AlarmJournal } from '../../ports/alarm-journal';
import type { Clock } from '../../ports/clock';
import type { WriteFigures } from './write-figures';

type Call = (...all: readonly unknown[]) => unknown;

/** The same journal, with each commit measured: whatever is named `append…` commits before it returns. */
export function measuredJournal(journal: AlarmJournal, figures: WriteFigures, clock: Clock): AlarmJournal {
  const measured =
    (write: Call): Call =>
    (...all) => {
      const beganMs = clock.monotonicMs();
      try {
        const rows = write(...all);
        figures.committed(Array.isArray(rows) ? rows.length : 1, clock.monotonicMs() - beganMs);
        return rows;
      } catch (fault) {
        figures.failed(fault);
        throw fault;
      }
    };
  return new Proxy(journal, {
    get(target, key) {
      const member = Reflect.get(target, key) as unknown;
      if (typeof member !== 'function') return member;
      const call = member.bind(target) as Call;
      return typeof key === 'string' && key.startsWith('append') ? measured(call) : call;
    },
  });
}
