import type { StartTrialRequest, TrialOutcome } from '@ebbline/shared/contract/limit-trial';
import { modes, type Mode } from '@ebbline/shared/contract/http-api';
import { limitTrialSchema } from '@ebbline/shared/contract/limit-trial';
import { describe, expect, it } from 'vitest';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { smallSite } from '../../../../helpers/small-site';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';

const fromMs = Date.UTC(2031, 4, 6);
const site = smallSite();
const iso = (second: number): string => new Date(fromMs + second * 1000).toISOString();

/** A trial over two hours in which every named point has a value each second. */
async function tryGroup(
  request: Pick<StartTrialRequest, 'entry' | 'units' | 'proposed'>,
  values: Readonly<Record<string, (second: number) => number>>,
) {
  const history = historyInMemory(site);
  for (const [name, valueAt] of Object.entries(values)) {
    const [holder = '', point = ''] = name.split(' ');
    for (let second = 0; second < 7200; second += 1)
      history.put(holder, point, fromMs + second * 1000, valueAt(second));
  }
  return limitTrialSchema.parse(await tried(deskOver(site, history), { ...request, from: iso(0), to: iso(7200) }));
}

const spans = (outcome: TrialOutcome | null) =>
  (outcome?.episodes ?? []).map(({ from, to, unit, part }) => [
    (Date.parse(from) - fromMs) / 1000,
    to === null ? null : (Date.parse(to) - fromMs) / 1000,
    unit,
    part,
  ]);

describe('a trial of what is judged for a hall', () => {
  it('runs once for the hall of the chosen units, with the margins of all its units, and names the hall', async () => {
    // The margin of m2 is at its limit in 4 h from 1000 s to 2000 s, and in 12 h before and after; that of m1 always in 20 h.
    const values = {
      'm1 marginTimeToLimit': () => 20 * 3600,
      'm2 marginTimeToLimit': (second: number) => (second >= 1000 && second < 2000 ? 4 : 12) * 3600,
    };
    const asked = { entry: 'MARGIN-3', units: ['m1', 'm2'], proposed: { limit: 3 * 3600 } };
    const trial = await tryGroup(asked, values);
    // Below 8 h, told after 5 min; beyond 10 h it is over, 15 min later.
    expect(spans(trial.live)).toEqual([[1300, 2900, 'm1', 'north']]);
    expect(trial.live?.episodes[0]).toMatchObject({ worst: 4 * 3600, limit: 8 * 3600, priority: null });
    // Never below 3 h.
    expect(trial.proposed?.raised).toBe(0);
    expect(trial).toMatchObject({ units: ['m1'], method: 'stored', point: null, secondsJudged: 7200 });
    expect(trial.notes.join(' ')).toContain('Judged for each hall of the chosen units, with all of its units');
  });

  it('takes other delays, and leaves out what is switched off', async () => {
    // Sea level is 101.325 kPa (ISO 2533); 85 kPa is more than weather makes of any place below 800 m.
    const values = {
      'north ambient.pressure': (second: number) => (second >= 1000 && second < 3000 ? 85_000 : 100_500),
    };
    const sooner = await tryGroup({ entry: 'AMB-1', units: ['m1'], proposed: { onDelaySeconds: 60 } }, values);
    expect(spans(sooner.live)).toEqual([[1600, 3600, 'm1', 'north']]);
    expect(spans(sooner.proposed)).toEqual([[1060, 3600, 'm1', 'north']]);
    const off = await tryGroup({ entry: 'AMB-1', units: ['m1'], proposed: { enabled: false } }, values);
    expect([off.live?.raised, off.proposed?.raised]).toEqual([1, 0]);
  });
});

describe('a trial of what is judged for a loop', () => {
  it('sees the mode: water that is filled in raises nothing, and as much in another mode does', async () => {
    // 270 L within 40 minutes.
    const waterAt = (second: number): number => 0.05 + (0.27 * Math.min(2400, Math.max(0, second - 2400))) / 2400;
    const asked = { entry: 'TANK-4', units: ['m1'], proposed: { limit: 0.004 } };
    const raisedIn = async (mode: Mode): Promise<number | undefined> => {
      const modeAt = (second: number): number => modes.indexOf(second >= 2400 && second < 4800 ? mode : 'standby');
      return (await tryGroup(asked, { 'm1 waterVolume': waterAt, 'm1 mode': modeAt })).live?.raised;
    };
    expect([await raisedIn('filling'), await raisedIn('standby')]).toEqual([0, 1]);
  });
});

describe('a trial of what can’t be set', () => {
  it('says what to look at instead', () => {
    const request = { units: ['m1'], from: iso(0), to: iso(60), proposed: { onDelaySeconds: 1 } };
    for (const entry of ['INS-1', 'COM-1', 'SYS-2']) {
      const refused = deskOver(site, historyInMemory(site)).start({ ...request, entry });
      expect(refused).toMatchObject({ ok: false, fault: { code: 'TRIAL_ENTRY_NOT_TRIED' } });
      if (!refused.ok) expect(refused.fault.message).toContain('/api/alarm-performance tells how often');
    }
  });
});
