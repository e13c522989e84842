import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guidedKinds } from '@ebbline/shared/contract/guided-test';
import { guidedTable } from '../../../../../../backend/src/evaluation/pipeline/guided/guided-table';
import type { Plant } from '../plant';
import { act, begin, confirm, confirmUntilMeasured, newest, ventedPlant, zeroSite } from './guided-plant';

const cancel = (plant: Plant) => act(plant, { act: 'cancel', test: newest(plant).id });
/** A check that measures. */
function measuring(): Plant {
  const plant = ventedPlant();
  begin(plant, 'zeroCheck');
  confirmUntilMeasured(plant);
  return plant;
}

describe('a guided test', () => {
  it.each(guidedKinds)(
    '%s names its rule of steadiness with its source, and warns of what every test warns of',
    (kind) => {
      const { criterion, title } = guidedTable[kind];
      expect(criterion).toMatch(/own rule|common practice, no source|JCGM/i);
      expect(title).not.toBe('');
      const plant = ventedPlant();
      begin(plant, 'zeroCheck');
      const first = newest(plant).steps[0];
      expect(first?.cautions.join(' ')).toMatch(
        /local codes.*licensed.*glasses.*hot.*biocide.*aerosol.*lock out.*live equipment/is,
      );
    },
  );

  it.each(guidedKinds)('%s asks in none of its words to vent a loop or to stop the vacuum source', (kind) => {
    const plant = ventedPlant();
    const said = JSON.stringify([guidedTable[kind], plant.pipeline.guidedSteps(0, kind)]);
    const asking =
      said.match(/[^.:;]*\b(vent the|stop the (vacuum )?source|shut off the (vacuum )?source)[^.:;]*/gi) ?? [];
    expect(asking.filter((one) => !/do not|asks nobody/i.test(one))).toEqual([]);
  });

  it('stands at its cautions first, and takes its steps in order only', () => {
    const plant = ventedPlant();
    begin(plant, 'zeroCheck');
    expect(newest(plant)).toMatchObject({ state: 'confirm', at: 0 });
    expect(confirm(plant, {}, 'stands')).toMatchObject({ ok: false, code: 'GUIDED_STEP' });
    expect(confirm(plant, {}, 'cautions').ok).toBe(true);
    expect(confirm(plant, {}, 'cautions')).toMatchObject({ ok: false, code: 'GUIDED_STEP' });
    expect(confirm(plant, {}, 'stands').ok).toBe(true);
    expect(newest(plant)).toMatchObject({ state: 'measure', at: 2 });
    expect(confirm(plant, {}, 'zero')).toMatchObject({ ok: false, code: 'GUIDED_STEP' });
    expect(newest(plant).steps.map(({ by }) => by)).toEqual(['Ada', 'Ada', null]);
  });

  it('that begins in the same millisecond as the one before has an id of its own, so that no record is lost', () => {
    const plant = ventedPlant();
    begin(plant, 'zeroCheck');
    cancel(plant);
    begin(plant, 'zeroCheck');
    expect(plant.pipeline.guidedTests().map(({ state }) => state)).toEqual(['ended', 'confirm']);
  });

  it('is one at a time, beside a pressure-rise test too, and does nothing that the journal did not take', () => {
    const plant = ventedPlant();
    expect(act(plant, { act: 'start', kind: 'zeroCheck', settings: {} }, () => false)).toMatchObject({
      code: 'ACTION_NOT_RECORDED',
    });
    expect(plant.pipeline.guidedTests()).toEqual([]);
    begin(plant, 'zeroCheck');
    expect(begin(plant, 'zeroCheck')).toMatchObject({ ok: false, code: 'GUIDED_RUNNING' });
    const rise = plant.pipeline.actOnTightness(
      {
        kind: 'startTightness',
        unit: 'm1',
        plannedMs: 600_000,
        acceptanceLimitM3PerS: 1e-5,
        dry: true,
        sourceIsolated: true,
        gasVolumeM3: 1,
        operator: 'Ada',
        station: 's',
        comment: '',
      },
      plant.nowMs,
    );
    expect(rise).toMatchObject({ ok: false, code: 'TIGHTNESS_RUNNING' });
    expect(confirm(plant, { nothing: 1 })).toMatchObject({ ok: false, code: 'GUIDED_SETTING' });
    expect(act(plant, { act: 'cancel', test: newest(plant).id }, () => false)).toMatchObject({ ok: false });
    expect(newest(plant).state).toBe('confirm');
  });

  it('is cancelled by a person at a step and while it measures, without a verdict, and can not be taken further', () => {
    for (const plant of [measuring(), ventedPlant()]) {
      if (plant.pipeline.guidedTests().length === 0) begin(plant, 'zeroCheck');
      expect(cancel(plant).ok).toBe(true);
      expect(newest(plant)).toMatchObject({ state: 'ended', endedFor: 'cancelled', endedBy: 'Ada', verdict: null });
      expect(cancel(plant)).toMatchObject({ ok: false, code: 'GUIDED_ENDED' });
      expect(confirm(plant, {}, 'stands')).toMatchObject({ ok: false, code: 'GUIDED_ENDED' });
      expect(act(plant, { act: 'cancel', test: 'none' })).toMatchObject({ ok: false, code: 'GUIDED_UNKNOWN' });
    }
  });

  it.each([
    ['alarm', (plant: Plant): unknown => (plant.m1.water = true), 5],
    ['gateLost', (plant: Plant): unknown => (plant.m1.flow = 100), 8],
    ['gateLost', (plant: Plant): unknown => (plant.m1.pumpRunning = true), 8],
    ['inputBad', (plant: Plant): unknown => plant.silent.add('m1'), 50],
  ] as const)('is broken off as %s, says why, and tells the journal once', (endedFor, happen, withinS) => {
    const plant = measuring();
    plant.run(20);
    happen(plant);
    plant.run(withinS);
    const record = newest(plant);
    expect(record).toMatchObject({ state: 'ended', endedFor, endedBy: null, verdict: null, result: null });
    expect(record.endedSaid).not.toBeNull();
    // What was measured until then stays, in a step that is not done.
    const step = record.steps[record.at];
    expect(step).toMatchObject({ id: 'zero', doneMs: null });
    expect(step?.measured?.samples).toBeGreaterThanOrEqual(19);
    expect(step?.measured?.readings.length).toBeGreaterThan(1);
    expect(plant.pipeline.takeGuidedChanges()).toMatchObject([{ what: 'ended', actor: null, test: { endedFor } }]);
    expect(plant.pipeline.takeGuidedChanges()).toEqual([]);
  });

  it('is not broken off by one bad second', () => {
    const plant = measuring();
    plant.run(20);
    plant.m1.pumpRunning = true;
    plant.run(2);
    plant.m1.pumpRunning = false;
    plant.run(60);
    expect(newest(plant).endedFor).toBe('completed');
  });

  it('is broken off by an alarm while a person is asked, too', () => {
    const plant = ventedPlant();
    begin(plant, 'zeroCheck');
    plant.m1.water = true;
    plant.run(5);
    expect(newest(plant)).toMatchObject({ endedFor: 'alarm' });
  });

  it('ends at a reload of the site, and as interrupted at a restart, at the time at which the program goes on', () => {
    const plant = measuring();
    plant.reload(zeroSite()).run(1);
    expect(newest(plant)).toMatchObject({ endedFor: 'configuration', verdict: null });
    const before = measuring();
    const records = before.pipeline.guidedTests();
    const after = ventedPlant();
    after.pipeline.restoreGuided(records);
    after.run(1);
    expect(after.pipeline.takeGuidedChanges()).toMatchObject([{ what: 'ended', atMs: after.nowMs }]);
    expect(newest(after)).toMatchObject({ endedFor: 'interrupted', endedMs: after.nowMs });
  });
});

/** What can be done to a test and to its plant, in any order. */
const known = (plant: Plant): boolean => plant.pipeline.guidedTests().length > 0;
const moves = {
  begin: (plant: Plant) => void begin(plant, 'zeroCheck'),
  next: (plant: Plant) => known(plant) && confirm(plant),
  skip: (plant: Plant) => known(plant) && confirm(plant, {}, 'zero'),
  stands: (plant: Plant) => known(plant) && confirm(plant, {}, 'stands'),
  cancel: (plant: Plant) => known(plant) && cancel(plant),
  mode: (plant: Plant) => {
    plant.m1.mode = plant.m1.mode === 'vented' ? 'tightnessTest' : 'vented';
    plant.run(3);
  },
  pump: (plant: Plant) => {
    plant.m1.pumpRunning = !plant.m1.pumpRunning;
    plant.run(3);
  },
  source: (plant: Plant) => {
    plant.m1.vacuumRunning = !plant.m1.vacuumRunning;
    plant.run(3);
  },
  long: (plant: Plant) => void plant.run(40),
} as const;
const names = Object.keys(moves) as (keyof typeof moves)[];

describe('a gate of a guided test', () => {
  it('is skipped on no path: whatever people and plant do in whatever order', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...names), { minLength: 3, maxLength: 16 }), (path) => {
        const plant = ventedPlant();
        for (const name of ['begin', ...path] as const) {
          const before = known(plant) ? newest(plant) : null;
          const shut =
            before === null || before.state === 'ended'
              ? plant.pipeline.guidedRefusals(0, 'zeroCheck')
              : plant.pipeline.guidedNow(before, plant.nowMs).refusals;
          moves[name](plant);
          const isAct = ['begin', 'next', 'skip', 'stands'].includes(name);
          const after = known(plant) ? newest(plant) : null;
          if (after === null) continue;
          const moved = after.id !== before?.id || after.at !== before.at;
          // By a person it goes further through open gates alone, one step at a time.
          if (isAct && moved && before?.state !== 'measure') expect(shut).toEqual([]);
          if (isAct && moved && after.id === before?.id) expect(after.at).toBe(before.at + 1);
          // What stands behind it was confirmed in order, by a name.
          const done = after.steps.slice(0, after.at);
          expect(done.every(({ doneMs }) => doneMs !== null)).toBe(true);
          expect(done.every(({ kind, by }) => kind === 'measure' || by === 'Ada')).toBe(true);
          if (after.verdict !== null) expect(after.at).toBe(after.steps.length);
        }
      }),
      {
        numRuns: 30,
        examples: [[['pump', 'next']], [['next', 'source', 'next']], [['next', 'mode', 'next']], [['next', 'skip']]],
      },
    );
  });
});
