import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { actOnPermit } from '../../../../../backend/src/evaluation/pipeline/permits/act-on-permit';
import { watchPermits } from '../../../../../backend/src/evaluation/pipeline/permits/watch-permits';
import { createPipelineState } from '../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { buildSite, runUnitM } from '../../../../helpers/compiled-site-builder';

const minute = 60_000;
const branches = [null, 'r1', 'r2'] as const;

const step = fc.oneof(
  fc.record({
    kind: fc.constant('open' as const),
    branch: fc.constantFrom(...branches),
    minutes: fc.integer({ min: -5, max: 90 }),
    expected: fc.integer({ min: 0, max: 100 }),
    recorded: fc.boolean(),
  }),
  fc.record({ kind: fc.constant('close' as const), which: fc.nat(3), recorded: fc.boolean() }),
  fc.record({
    kind: fc.constant('pass' as const),
    minutes: fc.integer({ min: 1, max: 20 }),
    gas: fc.constantFrom(2, 2, 32),
  }),
);

/** What is open, by branch; the model knows nothing of how a permit closes itself, only that it is told. */
describe('permits', () => {
  it('whatever is opened, closed and passes: one a branch, sums of those in time, each change told once, nothing unrecorded', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const built = buildSite();
        runUnitM(built);
        const pipeline = createPipelineState(built.site, 'wall');
        runUnitM({ site: built.site, set: (point, value) => set(point, value) });
        function set(point: string, value: number): void {
          pipeline.state.value[built.slot(point)] = value;
          pipeline.state.reasons[built.slot(point)] = 0;
        }
        set('gasLoad', 2 / minute);
        let nowMs = 1_772_323_200_000;
        const open = new Map<string, { branch: string | null; expected: number; untilMs: number }>();
        const who = { operator: 'Ada', station: 's', comment: '' };
        for (const one of steps) {
          if (one.kind === 'open') {
            const { branch, expected, minutes, recorded } = one;
            const action = {
              kind: 'openPermit',
              unit: 'm1',
              branch,
              untilMs: nowMs + minutes * minute,
              ...who,
            } as const;
            const outcome = actOnPermit(
              pipeline,
              { ...action, expectedInLeakM3PerS: expected / minute },
              nowMs,
              () => recorded,
            );
            const covered = [...open.values()].some((known) => known.branch === null || known.branch === branch);
            expect(outcome.ok).toBe(minutes > 0 && !covered && recorded);
            if (outcome.ok) open.set(outcome.change.permit.id, { branch, expected, untilMs: action.untilMs });
          } else if (one.kind === 'close') {
            const permit = [...open.keys()][one.which] ?? 'none';
            const outcome = actOnPermit(pipeline, { kind: 'closePermit', permit, ...who }, nowMs, () => one.recorded);
            expect(outcome.ok).toBe(open.has(permit) && one.recorded);
            if (outcome.ok) open.delete(permit);
          } else {
            set('gasLoad', one.gas / minute);
            for (let second = 0; second < one.minutes * 60; second += 5) watchPermits(pipeline, 0, (nowMs += 5000));
            for (const { what, permit } of pipeline.permitChanges.splice(0)) {
              expect(open.has(permit.id)).toBe(true);
              if (what === 'closed') open.delete(permit.id);
              else expect(permit.untilMs).toBeLessThanOrEqual(nowMs);
            }
          }
          nowMs += 1;
          expect([...pipeline.permits.keys()].sort()).toEqual([...open.keys()].sort());
          const inTime = [...open.values()].filter(({ untilMs }) => untilMs >= nowMs);
          const expectedSum = inTime.reduce((sum, { expected }) => sum + expected / minute, 0);
          expect(pipeline.openPermits.count[0]).toBe(open.size);
          expect(pipeline.openPermits.expectedM3PerS[0]).toBeCloseTo(expectedSum, 9);
          const whole = [...open.values()].some(({ branch }) => branch === null);
          expect(pipeline.openPermits.wholeLoop[0]).toBe(whole ? 1 : 0);
        }
      }),
      { numRuns: 60 },
    );
  });
});
