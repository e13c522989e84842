import { expect, test } from 'vitest';
import { createPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import { tightnessSummary } from '../../backend/src/evaluation/pipeline/tightness/summary';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import { demoSite } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const units = demoFleet.filter(({ id }) => id === 'N3');
const litrePerMin = 1 / 60_000;
/** What the type leaks, what this unit leaks beside it, and a small slow in-leak of the simulator's, free L/min. */
const leak = 0.6 + (units[0]?.inLeakLPerMin ?? Number.NaN) + 5;

/** The loop is stopped, evacuated and its source shut off; the test is asked for as soon as nothing is in its way. */
function tightnessOf(acceptanceLimit: number) {
  const schedule = [
    { atS: 5, command: { operation: 'stop', unit: 'N3' } },
    { atS: 240, command: { operation: 'tightnessTest', unit: 'N3' } },
    { atS: 100, command: { fault: 'slowInLeak', unit: 'N3', size: 'small', action: 'start' } },
  ];
  const pipeline = createPipeline(demoSite(), { clock: 'source', startMs: Number.NaN });
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === 'N3');
  let nowMs = Number.NEGATIVE_INFINITY;
  for (const { sourceMs, topic, payload } of recordTelemetry({
    seed: 1,
    startMs,
    seconds: 950,
    units,
    schedule,
  })) {
    if (sourceMs > nowMs) {
      nowMs = sourceMs;
      pipeline.advance(nowMs);
      // A minute after the source was shut off: it has stopped turning, and the seconds' windows know it.
      if (nowMs - startMs > 330_000 && pipeline.tightnessTests().length === 0) {
        const plannedMs = 10 * 60_000;
        const rest = {
          dry: false,
          sourceIsolated: false,
          gasVolumeM3: null,
          operator: 'Ada',
          station: 's',
          comment: '',
        };
        if (pipeline.tightnessRefusals(unitIndex).length === 0)
          pipeline.actOnTightness(
            { kind: 'startTightness', unit: 'N3', plannedMs, acceptanceLimitM3PerS: acceptanceLimit, ...rest },
            nowMs,
          );
      }
    }
    pipeline.accept({ topic, payload: Buffer.from(payload), retained: false }, nowMs);
    pipeline.drainHistory(nowMs, false);
  }
  return pipeline.tightnessTests()[0];
}

test('a pressure-rise test of a stopped loop finds in ten minutes what leaks in, within the uncertainty that it states', () => {
  const record = tightnessOf(3 * litrePerMin);
  const { freeAir = Number.NaN, expandedUncertainty = Number.NaN } = record?.result ?? {};
  const told = record === undefined ? 'no test' : tightnessSummary(record);
  expect(record, told).toMatchObject({ endedFor: 'completed', steadiness: 'steady', verdict: 'fails' });
  expect(Math.abs(freeAir / litrePerMin - leak), told).toBeLessThan(expandedUncertainty / litrePerMin);
  expect(expandedUncertainty / freeAir, told).toBeLessThan(0.2);
});
