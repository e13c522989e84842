import type { GuidedRefusal } from '@ebbline/shared/contract/guided-test';
import type { PipelineState } from '../pipeline-state';
import type { GuidedTestKind } from './guided-test';
import type { GuidedView } from './guided-view';

/** What lacks in the site file hides what follows from it. */
const ofSiteFile = ['GUIDED_NO_POINT', 'GUIDED_NO_ACCURACY'];

/** Everything that is in the way of a test now, each with what to do; empty: it can begin, or go on where it has begun. */
export function shutGates(view: GuidedView, test: GuidedTestKind): GuidedRefusal[] {
  const begins = view.steps.length === 0;
  const found = [...test.gates, ...(begins ? (test.startGates ?? []) : [])].flatMap(({ code, shut }) => {
    const message = shut(view);
    return message === null ? [] : [{ code, message }];
  });
  const lacking = found.filter(({ code }) => ofSiteFile.includes(code));
  if (lacking.length > 0) return lacking;
  const alarm = alarmInTheWay(view.pipeline, view.plan.unit.id, test.expectedAlarms);
  return alarm === null ? found : [alarm, ...found];
}

/** A standing condition of priority 1 at the unit, whether it is told or set aside; null where there is none. */
export function alarmInTheWay(
  { book }: PipelineState,
  unit: string,
  expected: readonly string[],
): GuidedRefusal | null {
  const alarm = [...book.standing(), ...book.setAside()].find(
    (one) => one.unit === unit && one.active && one.priority === 1 && !expected.includes(one.entry),
  );
  if (alarm === undefined) return null;
  const message = `alarm ${alarm.entry} stands at this unit; what it asks for comes first`;
  return { code: 'GUIDED_ALARM', message };
}

/** Another test that goes on at the unit. */
export function otherTest({ guided, tightness }: PipelineState, unit: string): GuidedRefusal | null {
  const open = guided.open.get(unit)?.record;
  const rise = tightness.running.get(unit)?.record;
  const first = open ?? rise;
  if (first === undefined) return null;
  const message = `test ${first.id} of ${first.startedBy} goes on at this unit; end that first`;
  return { code: 'GUIDED_RUNNING', message };
}
