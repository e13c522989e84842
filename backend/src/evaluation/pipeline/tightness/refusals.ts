import { usable } from '../../alarm-rules/judge-context';
import { rateOf, type Rate } from '../../derive/level-rates';
import { WindowSignal } from '../../derive/memory/derive-memory';
import { deriveMemoryOf } from '../../derive/memory/memory-of-state';
import { readingUncertainty } from '../../derive/reading-uncertainty';
import { unitPlan, type UnitPlan } from '../../derive/unit-plan';
import type { PipelineState } from '../pipeline-state';
import type { StartTightness, TightnessRefusal } from '../tightness-record';
import { flows, sourceRuns } from './plant-at-rest';
import { gasNow, gasRoom } from './unit-gas';

/** How a test is to be run: what decides whether it can. */
export type TightnessPlan = Pick<StartTightness, 'dry' | 'sourceIsolated' | 'gasVolumeM3' | 'plannedMs'>;

/** As a person asks for it who says no more than "start". */
export const usualPlan: TightnessPlan = { dry: false, sourceIsolated: false, gasVolumeM3: null, plannedMs: 1_800_000 };

/** A loop nearer to ambient than this share draws too little for the test to say anything. Own rule. */
const leastVacuumShare = 0.9;
/** The level may move by so much of the gas room during the test: it is corrected by the level. Own rule. */
const levelShare = 0.1;

const rate: Rate = { value: Number.NaN, u: Number.NaN, degreesOfFreedom: Infinity };

/** Everything that stands in the way of a test now, each with what to do; empty: it can begin. */
export function tightnessRefusals(
  pipeline: PipelineState,
  unitIndex: number,
  asked: TightnessPlan,
): TightnessRefusal[] {
  const plan = unitPlan(pipeline.site, unitIndex);
  const missing = notPossible(pipeline, plan, asked);
  if (missing.length > 0) return missing;
  const found: TightnessRefusal[] = [];
  const refuse = (code: TightnessRefusal['code'], message: string): void => void found.push({ code, message });
  const { pressurePa, temperatureC, levelM } = gasNow(pipeline, unitIndex);
  const followsLevel = (gasRoom(plan.unit, plan, asked.dry, asked.gasVolumeM3, levelM)?.areaM2 ?? 0) > 0;
  if (Number.isNaN(pressurePa + temperatureC) || (followsLevel && Number.isNaN(levelM)))
    refuse(
      'TIGHTNESS_INPUT_BAD',
      'separator pressure, return temperature or separator level is bad or stale; see the points of the unit',
    );
  const runs = sourceRuns(pipeline, plan);
  if (!asked.sourceIsolated && runs !== false)
    refuse(
      'TIGHTNESS_SOURCE_RUNS',
      runs === null
        ? 'it is not known whether the vacuum source rests; say that its valve is shut, once it is'
        : 'the vacuum source runs; the test begins when it rests at its usual pressure, or when its valve is shut and you say so',
    );
  if (usable(pipeline.state, plan.slot['vacuum.bleedFlow']) > bleedIsShutM3PerS)
    refuse('TIGHTNESS_BLEED_OPEN', 'air comes in through the bleed of the vacuum source; shut it for the test');
  if (!asked.dry && flows(pipeline, plan) === true)
    refuse(
      'TIGHTNESS_FLOW',
      'water flows, and brings dissolved air to the separator; wait for a planned stop of the loop, with the load off',
    );
  if (followsLevel) refuseMoving(pipeline, plan, asked, refuse);
  const ambientPa = usable(pipeline.state, plan.ambientSlot);
  if (pressurePa > leastVacuumShare * (Number.isNaN(ambientPa) ? 101_325 : ambientPa))
    refuse('TIGHTNESS_NO_VACUUM', 'the separator is near ambient pressure: evacuate to the usual pressure first');
  return found;
}

/** A meter that reads less shows its own zero: free m³/s. Own rule (0.5 L/min). */
const bleedIsShutM3PerS = 0.5 / 60_000;

/** What the site file lacks. */
function notPossible({ site, state }: PipelineState, plan: UnitPlan, asked: TightnessPlan): TightnessRefusal[] {
  const { slot, unit } = plan;
  if (slot['separator.pressure'] < 0 || slot['return.temperature'] < 0)
    return [
      {
        code: 'TIGHTNESS_NO_PRESSURE',
        message: 'the site file has no separator.pressure or no return.temperature for this unit',
      },
    ];
  if (gasRoom(unit, plan, asked.dry, asked.gasVolumeM3, 0) === null)
    return [
      {
        code: 'TIGHTNESS_NO_VOLUME',
        message:
          'the site file does not say how much room there is for gas; state the gas volume, or add volumes to the site file',
      },
    ];
  const read = ['separator.pressure', 'return.temperature'] as const;
  const without = read.filter(
    (id) => usable(state, slot[id]) >= 0 && Number.isNaN(readingUncertainty(site, state, slot[id])),
  );
  return without.map((id) => ({
    code: 'TIGHTNESS_NO_ACCURACY',
    message: `the site file states no accuracy for ${id}: a result without uncertainty decides nothing`,
  }));
}

function refuseMoving(
  { site, state }: PipelineState,
  plan: UnitPlan,
  { plannedMs }: TightnessPlan,
  refuse: (code: TightnessRefusal['code'], message: string) => void,
): void {
  const memory = deriveMemoryOf(site, state);
  rateOf(memory.windows, memory.signal(plan.unitIndex, WindowSignal.separatorLevel), rate);
  if (Number.isNaN(rate.value)) {
    refuse('TIGHTNESS_LEVEL_MOVES', 'the separator level was watched for a few seconds only; try again in a minute');
    return;
  }
  const { separatorAreaM2, volumes } = plan.unit.design;
  const moved = Math.abs(rate.value) * (separatorAreaM2 ?? 0) * (plannedMs / 1000);
  if (Math.abs(rate.value) > 2 * rate.u && moved > levelShare * (volumes.separatorGasM3 ?? Infinity))
    refuse('TIGHTNESS_LEVEL_MOVES', 'the separator level moves; wait until water has settled in the tanks');
}
