import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { Ref, ShallowRef } from 'vue';
import { ref, shallowReadonly, shallowRef } from 'vue';
import type { JournalPage } from '../api/alarms';
import { readJournal } from '../api/alarms';
import type { Result } from '@ebbline/shared/errors/result';
import { problemText } from '../text/problem-text';

export interface JournalOptions {
  /** Default: the server. */
  readonly read?: (from: string | null, after: number | null) => Promise<Result<JournalPage>>;
  /** Pages fetched in one go before the reader is asked. Default 5. */
  readonly pagesAtOnce?: number;
}

/** The journal of a period, newest first. Pages come oldest first, so they are gathered until the end or the bound. */
export function useJournal(options: JournalOptions = {}): {
  readonly rows: Readonly<ShallowRef<readonly JournalRow[]>>;
  readonly more: Ref<boolean>;
  readonly busy: Ref<boolean>;
  readonly problem: Ref<string | null>;
  readonly read: (from: string | null) => Promise<void>;
  readonly readMore: () => Promise<void>;
} {
  const read = options.read ?? readJournal;
  const rows = shallowRef<readonly JournalRow[]>([]);
  const more = ref(false);
  const busy = ref(false);
  const problem = ref<string | null>(null);
  let period: string | null = null;
  let after: number | null = null;
  /** Counts what was asked for: an answer to an older wish says nothing any more. */
  let asked = 0;

  async function gather(): Promise<void> {
    const mine = asked;
    busy.value = true;
    problem.value = null;
    for (let page = 0; page < (options.pagesAtOnce ?? 5); page += 1) {
      const reply = await read(period, after);
      if (mine !== asked) return;
      if (!reply.ok) {
        problem.value = problemText(reply.fault.code, reply.fault.message);
        break;
      }
      rows.value = [...[...reply.value.rows].reverse(), ...rows.value];
      more.value = reply.value.next !== null;
      after = reply.value.next;
      if (after === null) break;
    }
    busy.value = false;
  }

  return {
    rows: shallowReadonly(rows),
    more,
    busy,
    problem,
    async read(from) {
      asked += 1;
      period = from;
      after = null;
      rows.value = [];
      await gather();
    },
    readMore: gather,
  };
}
