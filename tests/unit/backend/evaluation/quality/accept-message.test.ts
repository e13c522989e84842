import { describe, expect, it } from 'vitest';
import { GatewayStatus } from '../../../../../backend/src/evaluation/sample/intake-context';
import { modes } from '@ebbline/shared/contract/http-api';
import { unitOneObject, unitOneSamples } from '../../intake-fuzz/valid-messages';
import { intakeRig } from './intake-rig';

const t0 = Date.UTC(2026, 0, 1);
const returnOf = (v: number, ts: number) => ({ v, ts });
const topic = 'small/m2/return/t';

describe('acceptMessage: what payloads mean', () => {
  it('reads one object of a unit into SI, absolute', () => {
    const rig = intakeRig();
    rig.send('small/north/barometer', '1000', t0);
    const acceptance = rig.send('small/m1/telemetry', { ...unitOneObject(t0), supply: { t: 35, p: -26 } }, t0);
    expect(acceptance).toMatchObject({ accepted: unitOneSamples, refused: 0, newestSourceMs: t0 });
    expect(rig.value('m1', 'supply.temperature')).toBe(35);
    // 100.0 kPa ambient − 26 kPa gauge
    expect(rig.value('m1', 'supply.pressure')).toBeCloseTo(74_000, 6);
    expect(rig.reasons('m1', 'supply.pressure')).toEqual([]);
    expect(rig.value('m1', 'supplyTank.level')).toBeCloseTo(0.45 + 0.007 * Math.sin(t0 / 7000), 9);
    expect(rig.value('m1', 'vacuum.speed')).toBeCloseTo((20 + Math.sin(t0 / 7000)) / 50, 9);
    expect(rig.value('m1', 'pump.running')).toBe(1);
    expect(rig.value('m1', 'water.found')).toBe(0);
    expect(rig.value('m1', 'mode')).toBe(modes.indexOf('running'));
    expect(rig.value('m1', 'branch.r2.return.temperature')).toBe(44.1);
  });

  it('reads bare numbers, words, Fahrenheit, US gallons, inches of mercury and vacuum', () => {
    const rig = intakeRig();
    rig.send('small/north/barometer', '1000', t0);
    rig.send('small/m2/supply/t', '95', t0);
    rig.send('small/m2/flow', '100', t0);
    rig.send('small/m2/tank/p', '26', t0);
    rig.send('small/m2/separator/p', { 'value.now': -20, 'at.s': t0 / 1000, q: true }, t0);
    rig.send('small/m2/pump/run', 'OFF', t0);
    rig.send('small/m2/mode', 'standby', t0);
    // 95 °F is 35 °C by definition of the scales.
    expect(rig.value('m2', 'supply.temperature')).toBeCloseTo(35, 9);
    // NIST SP 811 (2008) B.8: gallon (US) per minute = 6.309 020 E−05 m³/s; inch of mercury, conventional = 3.386 389 E+03 Pa.
    expect(rig.value('m2', 'loop.flow')).toBeCloseTo(6.30902e-3, 8);
    expect(rig.value('m2', 'separator.pressure')).toBeCloseTo(100_000 - 20 * 3386.389, 0);
    expect(rig.value('m2', 'supplyTank.pressure')).toBeCloseTo(74_000, 6);
    expect(rig.value('m2', 'pump.running')).toBe(0);
    expect(rig.value('m2', 'mode')).toBe(modes.indexOf('standby'));
  });

  it('takes ambient from the altitude while no barometer reads, and says so', () => {
    const rig = intakeRig();
    rig.send('small/m2/tank/p', '26', t0);
    // ISO 2533, table: 99 890 Pa at 120 m (p = 101 325 (1 − 0.0065 · 120/288.15)^5.25588).
    expect(rig.value('m2', 'supplyTank.pressure')).toBeCloseTo(99_890 - 26_000, -1);
    expect(rig.reasons('m2', 'supplyTank.pressure')).toEqual(['ambientEstimated']);
    rig.send('small/north/barometer', '1500', t0 + 1000);
    rig.send('small/m2/tank/p', '26.1', t0 + 1000);
    expect(rig.reasons('m2', 'supplyTank.pressure')).toEqual(['ambientEstimated']);
    rig.send('small/north/barometer', '1000', t0 + 2000);
    rig.send('small/m2/tank/p', '26.2', t0 + 2000);
    expect(rig.reasons('m2', 'supplyTank.pressure')).toEqual([]);
  });

  it('spoils only the field that is bad', () => {
    const rig = intakeRig();
    const acceptance = rig.send('small/m1/telemetry', { ...unitOneObject(t0), flow: 'much', leak: null }, t0);
    expect(acceptance).toMatchObject({ accepted: unitOneSamples - 2, refused: 2 });
    expect(acceptance.refusal?.code).toBe('VALUE_NOT_NUMBER');
    expect(acceptance.refusal?.message).toContain('small/m1/telemetry, flow');
    expect(acceptance.refusal?.message).not.toContain('much');
  });

  it('hears a gateway by its status topic and takes no sample from it', () => {
    const rig = intakeRig();
    expect(rig.context.gatewayStatus[0]).toBe(GatewayStatus.unknown);
    expect(rig.send('small/east/status', 'online', t0, true)).toMatchObject({ accepted: 0, refused: 0 });
    expect(rig.context.gatewayStatus[0]).toBe(GatewayStatus.online);
    rig.send('small/east/status', 'offline', t0);
    expect(rig.context.gatewayStatus[0]).toBe(GatewayStatus.gone);
  });
});

describe('acceptMessage: rules of time', () => {
  it('keeps a newer sample, counts a repeated one, and sends a late one to history only', () => {
    const rig = intakeRig();
    const slot = rig.slot('m2', 'return.temperature');
    expect(rig.send(topic, returnOf(44, t0), t0 + 100)).toMatchObject({ accepted: 1, newestSourceMs: t0 });
    expect(rig.send(topic, returnOf(44, t0), t0 + 200)).toMatchObject({ accepted: 0, repeated: 1 });
    expect(rig.send(topic, returnOf(43, t0 - 5000), t0 + 300)).toMatchObject({ accepted: 0, late: 1 });
    expect(rig.value('m2', 'return.temperature')).toBe(44);
    expect(rig.state.acceptedMs[slot]).toBe(t0 + 100);
    expect(rig.heard.map(({ sourceMs, value }) => [sourceMs, value])).toEqual([
      [t0, 44],
      [t0 - 5000, 43],
    ]);
  });

  it('lets another value of the same instant replace the first, without making it fresher', () => {
    const rig = intakeRig();
    rig.send(topic, returnOf(44, t0), t0 + 100);
    expect(rig.send(topic, returnOf(44.5, t0), t0 + 4000)).toMatchObject({ accepted: 1 });
    expect(rig.value('m2', 'return.temperature')).toBe(44.5);
    expect(rig.state.acceptedMs[rig.slot('m2', 'return.temperature')]).toBe(t0 + 100);
    expect(rig.heard).toHaveLength(2);
  });

  it('refuses what lies further in the future or the past than the site file allows', () => {
    const rig = intakeRig();
    expect(rig.send(topic, returnOf(44, t0 + 10_000), t0).accepted).toBe(1);
    expect(rig.send(topic, returnOf(44, t0 + 10_001), t0).refusal?.code).toBe('TIME_FUTURE');
    const week = 7 * 86_400_000;
    expect(rig.send(topic, returnOf(44, t0 - week), t0).late).toBe(1);
    expect(rig.send(topic, returnOf(44, t0 - week - 1), t0).refusal?.code).toBe('TIME_TOO_OLD');
    expect(rig.send(topic, { v: 44 }, t0).refusal?.code).toBe('TIME_MISSING');
    expect(rig.send(topic, { v: 44, ts: 'now' }, t0).refusal?.code).toBe('TIME_MALFORMED');
  });

  it('shows a retained sample without time as of unknown age until a live one comes', () => {
    const rig = intakeRig();
    expect(rig.send('small/m2/flow', '90', t0, true)).toMatchObject({ accepted: 1, newestSourceMs: Number.NaN });
    expect(rig.reasons('m2', 'loop.flow')).toEqual(['ageUnknown']);
    expect(rig.heard).toEqual([]);
    rig.send('small/m2/flow', '91', t0 + 1000);
    expect(rig.reasons('m2', 'loop.flow')).toEqual([]);
    // After a reconnect the broker sends the retained one again: it takes nothing back.
    expect(rig.send('small/m2/flow', '80', t0 + 2000, true)).toMatchObject({ accepted: 0, repeated: 1 });
    expect(rig.value('m2', 'loop.flow')).toBeCloseTo(91 * 6.30902e-5, 9);
  });

  it('takes a retained sample for as old as its source time says', () => {
    const rig = intakeRig();
    rig.send(topic, returnOf(44, t0 - 60_000), t0, true);
    expect(rig.reasons('m2', 'return.temperature')).toEqual(['stale']);
    rig.send(topic, returnOf(44, t0 - 2000), t0, true);
    expect(rig.reasons('m2', 'return.temperature')).toEqual([]);
    expect(rig.state.acceptedMs[rig.slot('m2', 'return.temperature')]).toBe(t0 - 2000);
  });

  it('gives a sample without a time that of its arrival', () => {
    const rig = intakeRig();
    expect(rig.send('small/m2/flow', '90', t0 + 7)).toMatchObject({ accepted: 1, newestSourceMs: t0 + 7 });
  });

  it('lets the source time rule on the source clock, but no stray stamp of another year', () => {
    const rig = intakeRig('source');
    expect(rig.send('small/m2/flow', '90', Number.NaN).refusal?.code).toBe('TIME_MISSING');
    expect(rig.send(topic, returnOf(44, t0), Number.NaN)).toMatchObject({ accepted: 1, newestSourceMs: t0 });
    expect(rig.state.acceptedMs[rig.slot('m2', 'return.temperature')]).toBe(t0);
    expect(rig.send(topic, returnOf(44.1, t0 + 3_600_000), t0)).toMatchObject({ accepted: 1 });
    expect(rig.state.acceptedMs[rig.slot('m2', 'return.temperature')]).toBe(t0 + 3_600_000);
    expect(rig.send(topic, returnOf(44.2, t0 + 400 * 86_400_000), t0).refusal?.code).toBe('TIME_FUTURE');
  });
});

describe('acceptMessage: quality', () => {
  it('marks what the sensor cannot tell, and a pressure below vacuum', () => {
    const rig = intakeRig();
    rig.send('small/north/barometer', '1000', t0);
    rig.send('small/m2/supply/t', '201', t0);
    expect(rig.reasons('m2', 'supply.temperature')).toEqual(['outOfRange']);
    rig.send('small/m2/tank/p', '100.1', t0);
    expect(rig.reasons('m2', 'supplyTank.pressure')).toEqual(['outOfRange']);
    rig.send('small/m2/tank/p', '99.9', t0 + 1000);
    expect(rig.reasons('m2', 'supplyTank.pressure')).toEqual([]);
  });

  it('marks what nothing can be, a temperature below absolute zero or a number beyond any plant, where no range is stated', () => {
    const rig = intakeRig();
    for (const absurd of [-274, -1e308, 1e16, 1e308]) {
      rig.send(topic, returnOf(absurd, t0), t0);
      expect(rig.reasons('m2', 'return.temperature'), `${absurd}`).toContain('outOfRange');
    }
  });

  it("marks what the sender marks, and what lacks the sender's promised quality", () => {
    const rig = intakeRig();
    const send = (quality: unknown, at: number) => {
      rig.send('small/m1/telemetry', { ...unitOneObject(at), quality }, at);
      return rig.reasons('m1', 'loop.flow');
    };
    expect(send('good', t0)).toEqual([]);
    expect(send(192, t0 + 1000)).toEqual([]);
    expect(send('bad', t0 + 2000)).toEqual(['senderFlag']);
    expect(send(undefined, t0 + 3000)).toEqual(['senderFlag']);
  });

  it('marks the first sample after a jump, and only that one', () => {
    const rig = intakeRig();
    const send = (t: number, second: number) => {
      const at = t0 + second * 1000;
      rig.send('small/m1/telemetry', { ...unitOneObject(at), supply: { t, p: -27 } }, at);
      return rig.reasons('m1', 'supply.temperature');
    };
    expect(send(35, 0)).toEqual([]);
    expect(send(40, 1)).toEqual([]);
    expect(send(45.1, 2)).toEqual(['jump']);
    expect(send(45.1, 3)).toEqual([]);
    // 12 K within 3 s: 4 K/s.
    expect(send(33.1, 6)).toEqual([]);
  });

  it('marks a value that stands still while samples go on coming', () => {
    const rig = intakeRig();
    const send = (flow: string, second: number) => {
      rig.send('small/m2/flow', flow, t0 + second * 1000);
      return rig.reasons('m2', 'loop.flow');
    };
    expect(send('90', 0)).toEqual([]);
    expect(send('90', 59)).toEqual([]);
    expect(send('90', 60)).toEqual(['stuck']);
    expect(send('90.1', 61)).toEqual([]);
    expect(send('90.1', 120)).toEqual([]);
  });
});
