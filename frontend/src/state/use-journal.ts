import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { JournalFilter } from '@ebbline/shared/contract/journal-search';
import type { Result } from '@ebbline/shared/errors/result';
import type { Ref, ShallowRef } from 'vue';
import { ref, shallowReadonly, shallowRef } from 'vue';
import type { JournalPage } from '../api/alarms';
import { readJournal } from '../api/alarms';
import { problemText } from '../text/problem-text';

export interface JournalOptions {
  /** Default: the server. */
  readonly read?: (filter: JournalFilter, before: number | null, limit: number) => Promise<Result<JournalPage>>;
  /** Rows that are asked for at a time. Default 100. */
  readonly rowsAtOnce?: number;
  /** A page may hold few rows of what is looked for, or none: so many are asked for before the reader is. Default 10. */
  readonly pagesAtOnce?: number;
}

/** What the journal holds of what is looked for, newest first, page by page. */
export function useJournal(options: JournalOptions = {}): {
  readonly rows: Readonly<ShallowRef<readonly JournalRow[]>>;
  /** True where older rows may follow. */
  readonly more: Ref<boolean>;
  readonly busy: Ref<boolean>;
  readonly problem: Ref<string | null>;
  readonly read: (filter: JournalFilter) => Promise<void>;
  readonly readMore: () => Promise<void>;
} {
  const read = options.read ?? readJournal;
  const rowsAtOnce = options.rowsAtOnce ?? 100;
  const rows = shallowRef<readonly JournalRow[]>([]);
  const more = ref(false);
  const busy = ref(false);
  const problem = ref<string | null>(null);
  let filter: JournalFilter = {};
  let before: number | null = null;
  /** Counts what was asked for: an answer to an older wish says nothing any more. */
  let asked = 0;

  async function gather(held: readonly JournalRow[]): Promise<void> {
    asked += 1;
    const mine = asked;
    busy.value = true;
    problem.value = null;
    let found = held;
    for (let page = 0; page < (options.pagesAtOnce ?? 10); page += 1) {
      const reply = await read(filter, before, rowsAtOnce);
      if (mine !== asked) return;
      if (!reply.ok) {
        problem.value = problemText(reply.fault.code, reply.fault.message);
        break;
      }
      found = [...found, ...reply.value.rows];
      rows.value = found;
      before = reply.value.next;
      more.value = before !== null;
      if (before === null || found.length - held.length >= rowsAtOnce) break;
    }
    busy.value = false;
  }

  return {
    rows: shallowReadonly(rows),
    more,
    busy,
    problem,
    async read(next) {
      // Rows of another filter must not stand under this one: not while it is read, nor where that fails.
      if (JSON.stringify(next) !== JSON.stringify(filter)) rows.value = [];
      filter = next;
      before = null;
      more.value = false;
      await gather([]);
    },
    readMore: () => gather(rows.value),
  };
}
