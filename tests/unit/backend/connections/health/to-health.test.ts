import { healthReasonCodes, healthReasons } from '@ebbline/shared/contract/health-reasons';
import { healthSchema } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { toHealth, type HealthFacts } from '../../../../../backend/src/connections/health/to-health';

const well: HealthFacts = {
  clock: { kind: 'wall', now: '2031-01-01T00:00:00.000Z' },
  broker: { state: 'connected', address: '127.0.0.1:1883', embedded: true, note: null },
  history: { state: 'ok', message: null, rowsQueued: 0, bytesKept: null },
  lastSampleAge: 0.4,
  runningFor: 100,
  reasons: [],
  version: '0.1.0',
};
const codes = (facts: Partial<HealthFacts>) => {
  const health = toHealth({ ...well, ...facts });
  expect(healthSchema.parse(health)).toEqual(health);
  return [health.status, ...health.reasons.map(({ code }) => code)];
};
const lost = { ...well.broker, state: 'lost' as const };

describe('health', () => {
  it('says beside every reason what to do', () => {
    for (const code of healthReasonCodes) {
      const [reason] = toHealth({ ...well, reasons: [{ code, message: 'so' }] }).reasons;
      expect(reason).toEqual({ code, message: 'so', action: healthReasons[code].action });
      expect(reason?.action.length).toBeGreaterThan(10);
    }
  });

  it('is ok where everything is', () => {
    expect(codes({})).toEqual(['ok']);
  });

  it('is starting, never ok, until the first sample, and after half a minute tells of silence', () => {
    expect(codes({ lastSampleAge: null, runningFor: 9 })).toEqual(['starting']);
    expect(codes({ lastSampleAge: null, runningFor: 29 })).toEqual(['starting']);
    expect(codes({ lastSampleAge: null, runningFor: 31 })).toEqual(['degraded', 'NO_SAMPLES']);
    expect(codes({ lastSampleAge: 31 })).toEqual(['degraded', 'NO_SAMPLES']);
  });

  it('tells of a lost broker alone, not also of the silence that follows', () => {
    expect(codes({ broker: lost, lastSampleAge: 100 })).toEqual(['degraded', 'BROKER_LOST']);
    expect(codes({ broker: { ...lost, state: 'connecting' }, lastSampleAge: null, runningFor: 2 })).toEqual([
      'starting',
    ]);
  });

  it('tells of history that fails and of what the judge reports', () => {
    const failing = { ...well.history, state: 'failing' as const, message: 'disk full' };
    const journal = { code: 'JOURNAL_FAILING', message: 'not recorded' } as const;
    expect(codes({ history: failing, reasons: [journal] })).toEqual(['degraded', 'HISTORY_FAILING', 'JOURNAL_FAILING']);
  });
});
