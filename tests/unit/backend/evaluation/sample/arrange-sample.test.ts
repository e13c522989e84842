import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallSite } from '../../../../helpers/small-site';
import { intakeRig } from '../quality/intake-rig';

const t0 = Date.UTC(2026, 0, 1);
const hourMs = 3_600_000;
const topic = 'small/m2/return/t';
const site = smallSite();

/** One gateway and one machine; the time in force runs on whatever their clocks say. */
function bench() {
  const rig = intakeRig('wall', site);
  return {
    rig,
    send: (value: number, sourceMs: number, arrivalMs: number, wallMs = arrivalMs) =>
      rig.send(topic, { v: value, ts: sourceMs }, arrivalMs, false, wallMs),
  };
}

describe('a source time that a slot holds from while the machine’s clock was wrong', () => {
  it('is void once it would be refused, and the first right sample takes its place', () => {
    const { rig, send } = bench();
    expect(send(44, t0 + hourMs, t0, t0 + hourMs)).toMatchObject({ accepted: 1 });
    expect(send(45, t0 + 1000, t0 + 1000)).toMatchObject({ accepted: 1, late: 0 });
    const slot = rig.slot('m2', 'return.temperature');
    expect([rig.state.value[slot], rig.state.sourceMs[slot], rig.state.acceptedMs[slot]]).toEqual([
      45,
      t0 + 1000,
      t0 + 1000,
    ]);
  });

  it('stands as long as it is believed: what is older is late', () => {
    const { send } = bench();
    send(44, t0 + site.futureToleranceMs, t0);
    expect(send(45, t0, t0)).toMatchObject({ accepted: 0, late: 1 });
    expect(send(44, t0 + hourMs, t0, t0 + hourMs)).toMatchObject({ accepted: 1 });
    expect(send(45, t0 + 1000, t0 + 1000, t0 + hourMs)).toMatchObject({ accepted: 0, late: 1 });
  });

  it('has nothing late for longer than the tolerance, whatever both clocks did before they were right', () => {
    const stepMs = fc.integer({ min: -2 * hourMs, max: 2 * hourMs });
    const smallStepMs = fc.integer({ min: -30_000, max: 30_000 });
    const offset = fc.oneof(fc.constant(0), stepMs, smallStepMs);
    const both = fc.oneof(
      offset.map((ms) => [ms, ms] as const),
      fc.tuple(offset, offset),
    );
    fc.assert(
      fc.property(fc.array(both, { maxLength: 12 }), (steps) => {
        const { send } = bench();
        let nowMs = t0;
        steps.forEach(([machineMs, gatewayMs], i) => {
          send(40 + (i % 3), nowMs + gatewayMs, nowMs, nowMs + machineMs);
          nowMs += 1000;
        });
        send(50, nowMs, nowMs);
        nowMs += site.futureToleranceMs + 1;
        expect(send(51, nowMs, nowMs)).toMatchObject({ accepted: 1, late: 0, refused: 0 });
      }),
    );
  });

  it('is of no concern on the source clock, where the newest time is the time', () => {
    const rig = intakeRig('source', site);
    const send = (v: number, ts: number, arrivalMs: number) =>
      rig.send(topic, { v, ts }, arrivalMs, false, t0 - 30 * 24 * hourMs);
    send(44, t0, Number.NaN);
    send(44.5, t0 + hourMs, t0);
    expect(send(45, t0 + 1000, t0 + hourMs)).toMatchObject({ accepted: 0, late: 1 });
  });
});
