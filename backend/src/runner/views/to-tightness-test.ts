import type { TightnessTest } from '@ebbline/shared/contract/tightness-test';
import { tightnessCautions } from '../../evaluation/pipeline/tightness/cautions';
import { tightnessSummary } from '../../evaluation/pipeline/tightness/summary';
import type { TightnessRecord } from '../../evaluation/pipeline/tightness-record';
import { timeText } from './time-text';

/** A pressure-rise test in the words of the contract, as it is at `nowMs`. */
export function toTightnessTest(record: TightnessRecord, nowMs: number): TightnessTest {
  const { begin, endedMs } = record;
  return {
    id: record.id,
    unit: record.unit,
    state: record.endedFor === null ? 'running' : 'ended',
    startedBy: record.startedBy,
    station: record.station,
    startedAt: isoOf(record.startedMs),
    plannedMinutes: record.plannedMs / 60_000,
    acceptanceLimit: record.acceptanceLimitM3PerS,
    dry: record.dry,
    sourceIsolated: record.sourceIsolated,
    gasVolumeStated: record.gasVolumeStatedM3,
    comment: record.comment,
    elapsed: elapsedS(record, nowMs),
    samples: record.samples,
    begin: {
      pressure: begin.pressurePa,
      temperature: begin.temperatureC,
      level: begin.levelM,
      gasVolume: begin.gasVolumeM3,
    },
    result: record.result,
    steadiness: record.steadiness,
    verdict: record.verdict,
    endedFor: record.endedFor,
    endedBy: record.endedBy,
    endedAt: endedMs === null ? null : timeText(endedMs),
    summary: tightnessSummary(record),
    cautions: [...tightnessCautions],
  };
}

/** An end at a restart has no time before the first message. */
function elapsedS({ startedMs, endedMs }: TightnessRecord, nowMs: number): number {
  const until = endedMs !== null && Number.isFinite(endedMs) ? endedMs : nowMs;
  return Number.isFinite(until) ? Math.max(0, (until - startedMs) / 1000) : 0;
}

const isoOf = (ms: number): string => timeText(ms) ?? new Date(0).toISOString();
