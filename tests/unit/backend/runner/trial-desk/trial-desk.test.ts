import type { StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { describe, expect, it, test } from 'vitest';
import type { TrialDeskParts } from '../../../../../backend/src/runner/trial-desk/trial-desk';
import { buildSite } from '../../../../helpers/compiled-site-builder';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';

const fromMs = Date.UTC(2031, 4, 6);
const { site } = buildSite();
const iso = (second: number): string => new Date(fromMs + second * 1000).toISOString();
const request: StartTrialRequest = {
  entry: 'MARGIN-2',
  units: ['m1'],
  from: iso(0),
  to: iso(3600),
  proposed: { limit: 100 },
};

const deskOf = (parts: Partial<TrialDeskParts> = {}) => deskOver(site, historyInMemory(site), parts);

/** A desk whose clock moves by 6 ms a look, and whose trials go on only when they are let. */
function slowDesk() {
  let ms = 0;
  const waiting: (() => void)[] = [];
  const desk = deskOf({
    monotonicMs: () => (ms += 6),
    pause: () => new Promise((done) => waiting.push(done)),
  });
  const goOn = async (): Promise<void> => {
    waiting.splice(0).forEach((done) => done());
    for (let turn = 0; turn < 50; turn += 1) await Promise.resolve();
  };
  return { desk, goOn };
}

describe('the desk for limit trials', () => {
  test.for([
    ['an entry that nobody knows', { entry: 'MARGIN-9' }, 'TRIAL_ENTRY_UNKNOWN'],
    ['an entry of a point', { entry: 'INS-1' }, 'TRIAL_ENTRY_NOT_TRIED'],
    ['an entry about the program', { entry: 'SYS-1' }, 'TRIAL_ENTRY_NOT_TRIED'],
    ['a unit that is not there', { units: ['m1', 'm9'] }, 'UNIT_UNKNOWN'],
    ['a unit that lacks what the entry is judged by', { entry: 'VENT-1' }, 'TRIAL_UNIT_WITHOUT'],
    ['a limit of an entry that is yes or no', { entry: 'WATER-1' }, 'TRIAL_SETTING_ABSENT'],
    ['a lower end of an entry that has one end', { proposed: { low: 1 } }, 'TRIAL_SETTING_ABSENT'],
    ['a period that ends before it begins', { to: iso(-1) }, 'TRIAL_RANGE'],
    ['a period of four years', { to: iso(4 * 365 * 86_400) }, 'TRIAL_RANGE'],
  ] as const)('refuses %s', ([, changed, code]) => {
    expect(
      deskOf().start({ ...request, ...changed, units: [...(('units' in changed && changed.units) || ['m1'])] }),
    ).toMatchObject({
      ok: false,
      fault: { code },
    });
  });

  it('refuses what is still to come, and leaves out of a period what is', async () => {
    const parts = { nowMs: () => fromMs + 600_000 };
    expect(deskOf(parts).start({ ...request, from: iso(700) })).toMatchObject({ fault: { code: 'TRIAL_RANGE' } });
    expect((await tried(deskOf(parts), request)).to).toBe(iso(600));
  });

  it('tells how far a trial is and how long it still takes, and no outcome before its end', async () => {
    const { desk, goOn } = slowDesk();
    const started = desk.start(request);
    if (!started.ok) throw new Error(started.fault.message);
    expect(started.value).toMatchObject({ state: 'running', progress: 0, secondsLeft: null, live: null });
    const told: number[] = [];
    for (let turn = 0; turn < 20; turn += 1) {
      await goOn();
      const found = desk.find(started.value.id);
      if (!found.ok) throw new Error(found.fault.message);
      told.push(found.value.progress);
      if (found.value.state === 'done') break;
      expect(found.value.live).toBeNull();
      if (found.value.progress > 0) expect(found.value.secondsLeft).toBeGreaterThan(0);
    }
    expect(told.length).toBeGreaterThan(2);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(desk.find(started.value.id)).toMatchObject({ value: { state: 'done', progress: 1, secondsLeft: 0 } });
  });

  it('says from the start how long it will take, by how fast an earlier one went, also one of another entry', async () => {
    let ms = 0;
    const desk = deskOf({ monotonicMs: () => (ms += 6), pause: () => Promise.resolve() });
    const first = desk.start(request);
    expect(first).toMatchObject({ value: { secondsLeft: null } });
    const beganMs = ms;
    await tried(desk, { ...request, to: iso(1) });
    const found = (id: string) => (desk.find(id) as { value: { state: string; secondsLeft: number } }).value;
    if (!first.ok) throw new Error(first.fault.message);
    while (found(first.value.id).state === 'running') await Promise.resolve();
    const tookS = (ms - beganMs) / 1000;
    for (const entry of ['MARGIN-2', 'WATER-1']) {
      const next = desk.start({ ...request, entry, proposed: { onDelaySeconds: 9 } });
      if (!next.ok) throw new Error(next.fault.message);
      expect(next.value).toMatchObject({ state: 'running', progress: 0 });
      // As long as before or so: the clock stands between two looks.
      expect(next.value.secondsLeft).toBeGreaterThan(0);
      expect(next.value.secondsLeft).toBeLessThan(3 * tookS);
      desk.cancel(next.value.id);
    }
    expect(found(first.value.id)).toMatchObject({ state: 'done', secondsLeft: 0 });
  });

  it('ends a trial that is cancelled, and tells what it has found so far', async () => {
    const { desk, goOn } = slowDesk();
    const started = desk.start(request);
    if (!started.ok) throw new Error(started.fault.message);
    const { id } = started.value;
    await goOn();
    expect(desk.cancel(id)).toMatchObject({ value: { state: 'cancelled', secondsLeft: null, live: { raised: 0 } } });
    const { progress } = (desk.find(id) as { value: { progress: number } }).value;
    await goOn();
    await goOn();
    expect(desk.find(id)).toMatchObject({ value: { state: 'cancelled', progress } });
    expect(progress).toBeLessThan(1);
  });

  it('runs a few at once and keeps the latest', async () => {
    const { desk } = slowDesk();
    const first = desk.start(request);
    if (!first.ok) throw new Error(first.fault.message);
    desk.start(request);
    expect(desk.start(request)).toMatchObject({ ok: false, fault: { code: 'TRIALS_RUNNING' } });
    desk.cancel(first.value.id);
    expect(desk.start(request).ok).toBe(true);
    expect(desk.find('none')).toMatchObject({ ok: false, fault: { code: 'TRIAL_UNKNOWN' } });
    expect(desk.cancel('none')).toMatchObject({ ok: false, fault: { code: 'TRIAL_UNKNOWN' } });

    const quick = deskOf();
    const oldest = await tried(quick, request);
    for (let more = 0; more < 20; more += 1) await tried(quick, { ...request, to: iso(1) });
    expect(quick.find(oldest.id).ok).toBe(false);
  });

  it('fails with what history said where it can not be read', async () => {
    const history = historyInMemory(site);
    const store = {
      ...history,
      readSeconds: () => Promise.reject(new CodedError('HISTORY_READ_FAILED', 'a file is damaged')),
    };
    const trial = await tried(deskOver(site, store), request);
    expect(trial.state).toBe('failed');
    expect(trial.notes.join(' ')).toContain('a file is damaged');
  });

  it('judges what is left as minutes by their means, and says from when seconds are kept', async () => {
    const history = historyInMemory(site);
    for (let second = 0; second < 7200; second += 1)
      history.put('m1', 'vacuumMargin', fromMs + second * 1000, second >= 1800 && second < 2400 ? -50 : 900);
    history.minutesBeforeMs = fromMs + 3_600_000;
    const trial = await tried(deskOver(site, history), { ...request, to: iso(7200) });
    // Below 0 in the minutes from 1800 s on; at the second of them 60 s have passed. Gone at 2400 s, and a minute later for 5 s.
    const [episode] = trial.live?.episodes ?? [];
    expect([episode?.from, episode?.to]).toEqual([iso(1860), iso(2460)]);
    expect(trial.notes.join(' ')).toContain('Before 2031-05-06 01:00 UTC only minutes are kept');
    expect(trial.secondsJudged).toBe(7200);
  });
});
