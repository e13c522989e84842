import type { LimitTrial, TrialEpisode, TrialOutcome } from '@ebbline/shared/contract/limit-trial';
import { lineTable } from '../../evaluation/alarm-rules/limit-lines/line-table';
import type { Episode, OutcomeLog } from '../../evaluation/limit-trial/outcome-log';
import { limitsOf, toSettings, withProposed } from '../../evaluation/limit-trial/trial-settings';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { trialNotes } from './trial-notes';
import type { TrialRun } from './trial-run';

const dayMs = 86_400_000;
const iso = (ms: number): string => new Date(ms).toISOString();
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A trial as the interface tells it, with what has been found so far. */
export function toLimitTrial(id: string, run: TrialRun, site: CompiledSite): LimitTrial {
  const { entry, fromMs, method, request, toMs, units } = run.plan;
  const own = site.units[units[0] ?? -1]?.limits.get(entry.id);
  const points = site.holders[site.units[units[0] ?? -1]?.holder ?? -1]?.slotOf;
  const live = toSettings(entry.id, limitsOf(entry.id, own));
  const proposed = toSettings(entry.id, limitsOf(entry.id, withProposed(own, request.proposed)));
  return {
    id,
    entry: entry.id,
    title: entry.title,
    units: units.map((at) => site.units[at]?.id ?? ''),
    from: iso(fromMs),
    to: iso(toMs),
    state: run.state,
    method,
    progress: run.progress,
    secondsLeft: run.secondsLeft(),
    unit_of_measure: entry.unitOfMeasure,
    point: (lineTable[entry.id] ?? []).find(({ point }) => points?.has(point) === true)?.point ?? null,
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
