import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { describe, expect, it } from 'vitest';
import { varianceOf } from '../../backend/src/evaluation/derive/uncertainty-budget';
import { createPipeline, type CountingPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import { demoSite } from './judge-recording';

const startMs = Date.UTC(2031, 4, 6, 7, 0, 0);

/** The whole demo site as it runs, two minutes on. */
function running(): CountingPipeline {
  const pipeline = createPipeline(demoSite(), { clock: 'source', startMs: Number.NaN });
  let nowMs = Number.NEGATIVE_INFINITY;
  for (const { topic, payload, sourceMs } of recordTelemetry({ seed: 1, startMs, seconds: 130 })) {
    if (sourceMs > nowMs) {
      nowMs = sourceMs;
      pipeline.advance(nowMs);
    }
    pipeline.accept({ topic, payload: Buffer.from(payload), retained: false }, nowMs);
    pipeline.drainHistory(nowMs, false);
  }
  return pipeline;
}

const pipeline = running();
const { site } = pipeline;

describe('the uncertainty budget', () => {
  it.for(site.units.map(({ id }, index) => [id, index] as const))(
    'of every point of %s that states an uncertainty adds up to it',
    ([, index]) => {
      const unit = site.units[index];
      const slots = [unit?.holder ?? -1, site.halls[unit?.hall ?? -1]?.holder ?? -1].flatMap((holder) => [
        ...(site.holders[holder]?.slotOf.entries() ?? []),
      ]);
      const wrong: string[] = [];
      let stated = 0;
      for (const [id, slot] of slots) {
        const { state, parts } = pipeline.explain(index, slot);
        const expanded = state.expandedUncertainty[slot] ?? Number.NaN;
        if (site.slots.measured[slot] === 1 || Number.isNaN(expanded)) continue;
        stated += 1;
        const u = expanded / coverageFactorOf(state.degreesOfFreedom[slot] ?? Number.NaN);
        const ofParts = Math.sqrt(varianceOf(parts));
        if (!(Math.abs(ofParts - u) <= 1e-9 * Math.abs(u)))
          wrong.push(`${id}: ${parts.map(({ from }) => from).join(' + ')} make ${ofParts}, stated is ${u}`);
      }
      expect(wrong).toEqual([]);
      expect(stated).toBeGreaterThan(20);
    },
  );
});
