import { guidedCautions } from './guided-cautions';
import type { GuidedRecord, StepRecord } from './guided-record';
import type { GuidedTestKind, MeasurePlan, ReadingPlan, StepPlan } from './guided-test';
import type { GuidedView } from './guided-view';

/** Id of the first step of every test. */
export const cautionStep = 'cautions';

const undone = { doneMs: null, by: null, given: {}, comment: '', measured: null } as const;

/** The steps of a test as they stand at its start: the cautions first, whatever follows. */
export function stepsAtStart(test: GuidedTestKind, view: GuidedView): readonly StepRecord[] {
  const first: StepRecord = {
    id: cautionStep,
    kind: 'confirm',
    title: 'What may hurt someone',
    text: 'Read all of it to everybody who takes part. Confirm when it is seen to.',
    cautions: [...test.cautions, ...guidedCautions],
    asks: [],
    ...undone,
  };
  return [first, ...test.steps(view).map((plan) => ({ ...toRecord(plan), ...undone }))];
}

const toRecord = (plan: StepPlan): Pick<StepRecord, 'id' | 'kind' | 'title' | 'text' | 'cautions' | 'asks'> => ({
  id: plan.id,
  kind: plan.kind,
  title: plan.title,
  text: plan.text,
  cautions: [],
  asks: plan.kind === 'confirm' ? (plan.asks ?? []) : [],
});

/** The plan of the step that measures now; null while a person is asked, or where the site has it no more. */
export function measurePlan(
  test: GuidedTestKind,
  view: GuidedView,
  { steps, at, state }: GuidedRecord,
): MeasurePlan | null {
  const id = steps[at]?.id;
  const plan = state === 'measure' ? test.steps(view).find((one) => one.id === id) : undefined;
  return plan?.kind === 'measure' ? plan : null;
}

/** The plan with its readings as the step began with them; one that is gone since then reads nothing. */
export const asBegun = (plan: MeasurePlan, readings: readonly string[]): MeasurePlan => ({
  ...plan,
  readings: readings.map((reading) => plan.readings.find((one) => one.reading === reading) ?? gone(reading)),
});

const gone = (reading: string): ReadingPlan => ({
  ...{ reading, title: reading, quantity: 'ratio', allowedDrift: 0 },
  read: () => Number.NaN,
});
