import { settingProposalSchema } from '@ebbline/shared/contract/alarm-performance';
import { describe, expect, it } from 'vitest';
import { margin1 } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/margin-1';
import { isol1 } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/isol-1';
import type { Limits } from '../../../../../backend/src/evaluation/alarm-rules/entry';
import { resolveLimits } from '../../../../../backend/src/evaluation/alarm-rules/resolve-limits';
import type { HistorySeconds, SecondsQuery } from '../../../../../backend/src/ports/history-store';
import { proposeSettings } from '../../../../../backend/src/runner/performance/propose-settings';
import { smallSite } from '../../../../helpers/small-site';
import { raise, step, toldOf } from '../../evaluation/alarm-performance/steps';

/** As the catalogue sets them. */
const site = { ...smallSite(), units: smallSite().units.map((one) => ({ ...one, limits: new Map() })) };
const unit = site.units[0]?.id ?? '';
const period = { fromMs: 0, toMs: 3_600_000 };

/** Told three times, every 28 s, from minute 10 on; each time cleared after 16 s, so that 12 s are between. */
const chatter = (alarm: string) =>
  [0, 28, 56].flatMap((s) => [
    raise(10 + s / 60, alarm, { unit }),
    step(10 + (s + 16) / 60, alarm, 'unacknowledged', 'returnedUnacknowledged', { unit }),
  ]);

const asked: SecondsQuery[] = [];
const storeOf = (value: number) => ({
  readSeconds(query: SecondsQuery): Promise<HistorySeconds> {
    asked.push(query);
    const count = (query.toMs - query.fromMs) / 1000;
    const [values, quality] = [new Float64Array(count).fill(value), new Uint8Array(count).fill(1)];
    return Promise.resolve({ fromMs: query.fromMs, count, values: [values], quality: [quality], minutesBeforeMs: -1 });
  },
});

const proposed = async (alarm: string, value: number) => {
  const { chattering } = await proposeSettings(toldOf(chatter(alarm), period), { site, store: storeOf(value) });
  const found = chattering.get(alarm);
  return found === undefined ? null : settingProposalSchema.parse(found);
};

const inForce = (id: 'MARGIN-1' | 'ISOL-1', { defaults }: { defaults: Limits }): Limits =>
  resolveLimits(defaults, site.units[0]?.limits.get(id));

/**
 * The condition goes `offDelayMs` before the alarm clears and comes back `onDelayMs` before it is told again: around the 12 s between
 * them it was gone for 12 s + off-delay − on-delay.
 */
const goneS = ({ onDelayMs, offDelayMs }: Limits): number => 12 + (offDelayMs - onDelayMs) / 1000;

describe('what is proposed for an alarm that chatters', () => {
  const { limit, deadband } = inForce('MARGIN-1', margin1);

  it('is a deadband, by the recorded values of the point that is judged, where they show how far it came back', async () => {
    asked.length = 0;
    const found = await proposed(`${unit}:MARGIN-1`, limit + deadband * 1.2);
    expect(found?.set.deadband).toBeGreaterThan(deadband * 1.2);
    expect(found?.unit_of_measure).toBe('Pa');
    expect(found?.why).toContain('vacuumMarginWorst');
    expect(asked.map(({ columns }) => columns[0]?.point)).toEqual(['vacuumMarginWorst', 'vacuumMarginWorst']);
  });

  it('is an off-delay, by the times of the journal, where the value came back too far', async () => {
    const found = await proposed(`${unit}:MARGIN-1`, limit + deadband * 100);
    const gone = goneS(inForce('MARGIN-1', margin1));
    expect(found?.set).toEqual({ offDelaySeconds: Math.floor(gone) + 1 });
    expect(found?.why).toContain('by the times of the journal');
  });

  it('is an off-delay where history has nothing', async () => {
    expect((await proposed(`${unit}:MARGIN-1`, Number.NaN))?.set.offDelaySeconds).toBeGreaterThan(0);
  });

  it('is an off-delay for an entry whose limit stands beside no one point', async () => {
    const found = await proposed(`${unit}:ISOL-1`, 0);
    const gone = goneS(inForce('ISOL-1', isol1));
    expect(found?.set).toEqual({ offDelaySeconds: Math.floor(gone) + 1 });
  });
});

describe('what is proposed for an alarm that is gone before anyone could act', () => {
  it('is an on-delay, by the times of the journal', async () => {
    const alarm = `${unit}:MARGIN-1`;
    const { onDelayMs, offDelayMs } = inForce('MARGIN-1', margin1);
    const lastedS = 50 + (onDelayMs - offDelayMs) / 1000;
    const steps = [
      raise(10, alarm, { unit }),
      step(10 + 50 / 60, alarm, 'unacknowledged', 'returnedUnacknowledged', { unit }),
    ];
    const { fleeting } = await proposeSettings(toldOf(steps, period), { site, store: storeOf(0) });
    expect(fleeting.get(alarm)?.set).toEqual({ onDelaySeconds: Math.floor(lastedS) + 1 });
    expect(fleeting.get(alarm)?.why).toContain('1 of 1 conditions');
  });
});
