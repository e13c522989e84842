import type { ReportAlarm, ReportSetAside, ReportStanding } from '@ebbline/shared/contract/report';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import { titleOf } from '../performance/title-of';
import { isoOf } from './iso-of';

type Aside = ReportSetAside['mode'];

/** What stood, the most urgent and then the oldest on top, each first-out with all that followed from it. */
export function standingOf(records: readonly AlarmRecord[]): ReportStanding[] {
  const standing = records.filter((record) => record.state !== 'normal' && asideMode(record) === null).sort(byNeed);
  const known = new Map(standing.map((record) => [record.alarm, record]));
  const followed = new Map<string, AlarmRecord[]>();
  const firsts: AlarmRecord[] = [];
  for (const record of standing) {
    const root = rootOf(record, known);
    if (root === record) firsts.push(record);
    else followed.set(root.alarm, [...(followed.get(root.alarm) ?? []), record]);
  }
  return firsts.map((first) => ({
    first: toLine(first),
    followed: (followed.get(first.alarm) ?? []).map(toLine),
  }));
}

/** What was set aside, what ends first on top. */
export const setAsideOf = (records: readonly AlarmRecord[]): ReportSetAside[] =>
  records
    .flatMap((record): ReportSetAside[] => {
      const mode = asideMode(record);
      if (mode === null) return [];
      const { id, entry, title, unit, hall, priority, state, where } = toLine(record);
      const { modeSinceMs = null, modeUntilMs = null, modeBy = null, modeReason, interimMeasures } = record;
      return [
        {
          ...{ id, entry, title, unit, hall, priority, state, where, mode },
          active: record.active,
          since: isoOf(modeSinceMs ?? record.sinceMs),
          until: modeUntilMs === null || !Number.isFinite(modeUntilMs) ? null : isoOf(modeUntilMs),
          by: modeBy,
          reason: modeReason ?? '',
          interimMeasures: interimMeasures ?? null,
        },
      ];
    })
    .sort((a, b) => endMs(a) - endMs(b) || a.priority - b.priority);

/** What has no end of its own comes last. */
const endMs = ({ until }: ReportSetAside): number => (until === null ? Number.MAX_SAFE_INTEGER : Date.parse(until));

function asideMode({ mode }: AlarmRecord): Aside | null {
  return mode === undefined || mode === null || mode === 'inService' ? null : mode;
}

/** The alarm that a chain of consequences goes back to, as far as it stands. */
function rootOf(record: AlarmRecord, known: ReadonlyMap<string, AlarmRecord>): AlarmRecord {
  const seen = new Set<string>();
  let root = record;
  for (;;) {
    seen.add(root.alarm);
    const above = root.foldedUnder === null ? undefined : known.get(root.foldedUnder);
    if (above === undefined || seen.has(above.alarm)) return root;
    root = above;
  }
}

const byNeed = (a: AlarmRecord, b: AlarmRecord): number =>
  a.priority - b.priority || a.sinceMs - b.sinceMs || a.alarm.localeCompare(b.alarm);

const toLine = (record: AlarmRecord): ReportAlarm => ({
  id: record.alarm,
  entry: record.entry,
  title: titleOf(record.entry),
  unit: record.unit,
  hall: record.hall,
  priority: record.priority,
  state: record.state,
  where: record.where,
  detail: record.detail ?? null,
  since: isoOf(record.sinceMs),
  acknowledgedBy: record.acknowledgedBy,
  acknowledgedAt: record.acknowledgedAtMs === null ? null : isoOf(record.acknowledgedAtMs),
});
