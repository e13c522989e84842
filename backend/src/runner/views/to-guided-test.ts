import type { GuidedStep, GuidedTest } from '@ebbline/shared/contract/guided-test';
import type { GuidedNow } from '../../evaluation/pipeline/guided/guided-live';
import type { GuidedRecord, StepRecord } from '../../evaluation/pipeline/guided/guided-record';
import { guidedSummary } from '../../evaluation/pipeline/guided/guided-summary';
import { guidedTable } from '../../evaluation/pipeline/guided/guided-table';
import { timeText } from './time-text';

/** A guided test in the words of the contract. */
export function toGuidedTest(record: GuidedRecord, { live, refusals }: GuidedNow): GuidedTest {
  const { title, criterion, asks } = guidedTable[record.kind];
  const { id, unit, kind, state, startedBy, station, comment, result, verdict, endedFor, endedBy } = record;
  return {
    id,
    unit,
    kind,
    title,
    state,
    startedBy,
    station,
    startedAt: timeText(record.startedMs) ?? new Date(0).toISOString(),
    comment,
    settings: asks.flatMap(({ key, title: asked, unit: unitOfMeasure }) => {
      const value = record.settings[key];
      return value === undefined ? [] : [{ title: asked, value, unit: unitOfMeasure }];
    }),
    steps: record.steps.map(toStep),
    step: state === 'ended' ? null : (record.steps[record.at]?.id ?? null),
    refusals: [...refusals],
    criterion,
    instruments: [...record.instruments],
    live,
    result,
    verdict,
    endedFor,
    endedBy,
    endedAt: record.endedMs === null ? null : timeText(record.endedMs),
    summary: guidedSummary(record),
  };
}

const toStep = ({ measured, doneMs, cautions, asks, ...step }: StepRecord): GuidedStep => ({
  ...step,
  cautions: [...cautions],
  asks: [...asks],
  doneAt: doneMs === null ? null : timeText(doneMs),
  seconds: measured?.seconds ?? null,
  samples: measured?.samples ?? null,
  readings: [...(measured?.readings ?? [])],
});
