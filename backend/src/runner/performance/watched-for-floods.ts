import type { AlarmJournal } from '../../ports/alarm-journal';
import type { FloodWatch } from './flood-watch';
import { toJournalStep } from './to-journal-step';

/** The same journal, followed by the watch: each row of an alarm once it is committed. */
export function watchedForFloods(journal: AlarmJournal, watch: FloodWatch): AlarmJournal {
  const append: AlarmJournal['append'] = (...all) => {
    const rows = journal.append(...all);
    watch.take(rows.map(toJournalStep));
    return rows;
  };
  return new Proxy(journal, {
    get(target, key) {
      if (key === 'append') return append;
      const member = Reflect.get(target, key) as unknown;
      return typeof member === 'function' ? (member.bind(target) as unknown) : member;
    },
  });
}
