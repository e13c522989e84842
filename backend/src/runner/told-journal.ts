import { setAsideOf } from '../evaluation/alarm-lifecycle/mode-facts';
import { stateFacts } from '../evaluation/alarm-lifecycle/states';
import type { AlarmRecord, AlarmTransition } from '../evaluation/pipeline/outputs';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { AlarmNews, AlarmNotice } from '../ports/notice';
import type { ShownAlarm } from './views/scene';
import { timeText } from './views/time-text';

type Append = AlarmJournal['append'];
/** A record, and what made it so, in the words of the contract. */
type InWords = (shown: ShownAlarm, change: AlarmNews['change']) => AlarmNews;

/**
 * The same journal, which tells of each change of an alarm once it has committed it. What it refuses is told at once as not
 * recorded, and again when it has it; but what a person wanted to do and could not is told of to nobody, since it was not done.
 */
export function toldJournal(journal: AlarmJournal, notice: AlarmNotice, inWords: InWords): AlarmJournal {
  const toldOf = new WeakSet<AlarmTransition>();
  const tell = (transitions: readonly AlarmTransition[], records: readonly AlarmRecord[], recorded: boolean): void =>
    notice.tell(toNews(transitions, records, recorded, inWords));
  const append: Append = (transitions, records, wallMs) => {
    let rows: ReturnType<Append>;
    try {
      rows = journal.append(transitions, records, wallMs);
    } catch (fault) {
      const fresh = transitions.filter((one) => one.actor === null && !toldOf.has(one));
      for (const one of fresh) toldOf.add(one);
      tell(fresh, [], false);
      throw fault;
    }
    tell(transitions, records, true);
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

function toNews(
  transitions: readonly AlarmTransition[],
  records: readonly AlarmRecord[],
  recorded: boolean,
  inWords: InWords,
): AlarmNews[] {
  const recordOf = new Map(records.map((record) => [record.alarm, record]));
  const lastOf = new Map(transitions.map((one) => [one.alarm, one]));
  const changes = transitions.map((one): AlarmNews => {
    const record = lastOf.get(one.alarm) === one ? recordOf.get(one.alarm) : undefined;
    return inWords({ record: record ?? recordAfter(one), recorded }, changeOf(one));
  });
  const others = records.filter(({ alarm }) => !lastOf.has(alarm));
  return [...changes, ...others.map((record) => inWords({ record, recorded }, null))];
}

const changeOf = ({ from, cause, atMs, actor }: AlarmTransition): AlarmNews['change'] => ({
  from,
  cause,
  at: timeText(atMs) ?? new Date(0).toISOString(),
  by: actor,
});

/** An alarm as a change left it, where no record of it stands: it has gone, or has changed again since. */
function recordAfter(change: AlarmTransition): AlarmRecord {
  const { alarm, entry, unit, hall, to, cause, priority, atMs, sinceMs, actor, detail } = change;
  const { value, limit, unitOfMeasure, where, foldedUnder } = change;
  const acknowledged = cause === 'acknowledge' && actor !== null;
  return {
    ...{ alarm, entry, unit, hall, priority, sinceMs, value, limit, unitOfMeasure, where, foldedUnder },
    ...(detail === undefined ? {} : { detail }),
    state: to,
    active: stateFacts[to].active,
    stateSinceMs: atMs,
    acknowledgedBy: acknowledged ? actor : null,
    acknowledgedAtMs: acknowledged ? atMs : null,
    ...setAsideOf(change),
  };
}
