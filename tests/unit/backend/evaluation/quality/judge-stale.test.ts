import { describe, expect, it } from 'vitest';
import { judgeStale } from '../../../../../backend/src/evaluation/quality/judge-stale';
import { staleAfterMs } from '../../../../../backend/src/evaluation/quality/stale';
import { unitOneObject } from '../../intake-fuzz/valid-messages';
import { intakeRig } from './intake-rig';

const t0 = Date.UTC(2026, 0, 1);
const unitOne = 1;
const unitTwo = 2;

describe('judgeStale', () => {
  it('waits three periods, and at least 5 s', () => {
    const { site, slot } = intakeRig();
    expect(staleAfterMs(site.slots, slot('m1', 'loop.flow'))).toBe(5000);
    expect(staleAfterMs(site.slots, slot('m1', 'plate.p1.temperature'))).toBe(60_000);
  });

  it('marks each point once, after its own time, and a new sample takes the mark off', () => {
    const rig = intakeRig();
    const { site, state } = rig;
    rig.send('small/m1/telemetry', unitOneObject(t0), t0);
    expect(judgeStale(site, state, unitOne, t0 + 5000)).toBe(0);
    const newly = judgeStale(site, state, unitOne, t0 + 5001);
    // All but the plate's temperature, which comes every 20 s.
    expect(newly).toBe(18);
    expect(judgeStale(site, state, unitOne, t0 + 6000)).toBe(0);
    expect(rig.reasons('m1', 'loop.flow')).toEqual(['stale']);
    expect(rig.reasons('m1', 'plate.p1.temperature')).toEqual([]);
    expect(judgeStale(site, state, unitOne, t0 + 60_001)).toBe(1);
    rig.send('small/m1/telemetry', unitOneObject(t0 + 61_000), t0 + 61_000);
    expect(rig.reasons('m1', 'loop.flow')).toEqual([]);
  });

  it('goes by the acceptance, not by the clock of the sender', () => {
    const rig = intakeRig();
    rig.send('small/m2/return/t', { v: 44, ts: t0 - 3_600_000 }, t0);
    expect(judgeStale(rig.site, rig.state, unitTwo, t0 + 4000)).toBe(0);
    expect(judgeStale(rig.site, rig.state, unitTwo, t0 + 5001)).toBe(1);
  });

  it('leaves points that were never heard, or whose age is unknown, as they are', () => {
    const rig = intakeRig();
    rig.send('small/m2/flow', '90', t0, true);
    expect(judgeStale(rig.site, rig.state, unitTwo, t0 + 1e9)).toBe(0);
    expect(rig.reasons('m2', 'loop.flow')).toEqual(['ageUnknown']);
    expect(rig.reasons('m2', 'supply.temperature')).toEqual(['notReceived']);
  });
});
