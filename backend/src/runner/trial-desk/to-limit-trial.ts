import type { LimitTrial, TrialEpisode, TrialOutcome } from '@ebbline/shared/contract/limit-trial';
import { lineTable } from '../../evaluation/alarm-rules/limit-lines/line-table';
import type { Episode, OutcomeLog } from '../../evaluation/limit-trial/outcome-log';
import { toSettings } from '../../evaluation/alarm-rules/settings/to-settings';
import { withProposed } from '../../evaluation/limit-trial/trial-settings';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { trialNotes } from './trial-notes';
import { isOfGroup } from './trial-plan';
import type { TrialRun } from './trial-run';

const dayMs = 86_400_000;
const iso = (ms: number): string => new Date(ms).toISOString();
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A trial as the interface tells it, with what has been found so far. */
export function toLimitTrial(id: string, run: TrialRun, site: CompiledSite): LimitTrial {
  const { entry, fromMs, method, request, subjects, toMs } = run.plan;
  const first = site.units[subjects[0]?.unit ?? -1];
  const own = first?.limits.get(entry.id);
  const points = site.holders[first?.holder ?? -1]?.slotOf;
  const live = toSettings(entry.id, own);
  const proposed = toSettings(entry.id, withProposed(own, request.proposed));
  return {
    id,
    entry: entry.id,
    title: entry.title,
    units: subjects.map(({ unit }) => site.units[unit]?.id ?? ''),
    from: iso(fromMs),
    to: iso(toMs),
    state: run.state,
    method,
    progress: run.progress,
    secondsLeft: run.secondsLeft(),
    unit_of_measure: entry.unitOfMeasure,
    point:
      (isOfGroup(entry) ? [] : (lineTable[entry.id] ?? [])).find(({ point }) => points?.has(point) === true)?.point ??
      null,
    live: toOutcome(run.logs.live, live, run),
    proposed: toOutcome(run.logs.proposed, proposed, run),
    secondsJudged: run.judgedMs / 1000,
    secondsMissing: run.missingMs / 1000,
    notes: trialNotes(run, site),
  };
}

function toOutcome(
  log: OutcomeLog,
  settings: TrialOutcome['settings'],
  { judgedMs, state }: TrialRun,
): TrialOutcome | null {
  if (state === 'running') return null;
  const { longest, shortest, total } = log.durations();
  return {
    settings,
    raised: log.raised,
    perDay: judgedMs > 0 ? (log.raised * dayMs) / judgedMs : 0,
    secondsInAlarm: total,
    longestSeconds: longest,
    shortestSeconds: shortest,
    toldAgain: log.toldAgain,
    chatteringTimes: log.chatteringTimes,
    episodes: log.episodes.map(toEpisode),
    more: log.more,
  };
}

const toEpisode = ({ fromMs, limit, part, priority, toMs, unit, worst }: Episode): TrialEpisode => ({
  unit,
  part,
  from: iso(fromMs),
  to: Number.isNaN(toMs) ? null : iso(toMs),
  priority,
  worst: finite(worst),
  limit: finite(limit),
});
