import { groupEntries, systemEntries } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { GroupEntryId, SystemEntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { clearFinding, createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import type { SystemState } from '../../../../../../backend/src/evaluation/alarm-rules/system-state';
import { type Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createGroupContext, fillGroupContext } from '../../../../../../backend/src/evaluation/pipeline/group-step';
import {
  createPipelineState,
  type PipelineState,
} from '../../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { RuleBench } from '../../alarm-rules/rule-bench';
import { plantSite, startMs } from '../plant';
import type { Judge, Swing } from './swing';

const finding = createFinding();

function judgeGroup(pipeline: PipelineState, id: GroupEntryId, active: boolean): Verdict {
  const entry = groupEntries.find((one) => one.id === id);
  if (entry === undefined) throw new Error(`no entry ${id} of loops and halls`);
  const context = createGroupContext(pipeline);
  fillGroupContext(pipeline, context, entry, 0, 0, startMs);
  clearFinding(finding);
  entry.judge(context, entry.defaults, active, finding);
  return finding.verdict;
}

const hall = (topic: string): object => ({
  name: topic,
  points: { 'ambient.pressure': { topic, path: 'p', unit: 'kPa', reference: 'absolute' } },
});

/** Three halls at sea level with a barometer each, the unit in the first. */
export const threeHalls = (): PipelineState =>
  createPipelineState(plantSite({ document: { halls: { h: hall('h'), h2: hall('h2'), h3: hall('h3') } } }), 'wall');

export function setBarometers({ site, state }: PipelineState, pascals: readonly number[]): void {
  site.halls.forEach(({ slot }, i) => {
    state.value[slot.ambientPressure] = pascals[i] as number;
    state.reasons[slot.ambientPressure] = 0;
  });
}

/** ISO 2533 at sea level, Pa. */
export const seaLevelPa = 101_325;

/** The first barometer reads so much above the other two. */
function apart(): Judge {
  const pipeline = threeHalls();
  return (pascals, active) => {
    setBarometers(pipeline, [seaLevelPa + pascals, seaLevelPa, seaLevelPa]);
    return judgeGroup(pipeline, 'AMB-1', active);
  };
}

/** All three read so much above what the altitude gives. */
function offAltitude(): Judge {
  const pipeline = threeHalls();
  return (pascals, active) => {
    setBarometers(pipeline, [seaLevelPa + pascals, seaLevelPa + pascals, seaLevelPa + pascals]);
    return judgeGroup(pipeline, 'AMB-1', active);
  };
}

function untilLimit(): Judge {
  const bench = new RuleBench({ also: ['marginTimeToLimit'] });
  return (hours, active) => judgeGroup(bench.set('marginTimeToLimit', hours * 3600).pipeline, 'MARGIN-3', active);
}

/** Water of the loop that goes on rising. */
export function risingWater(pipeline: PipelineState, gainedM3: number, ofHourM3: number): void {
  const { loopWater } = pipeline.plant;
  loopWater.gained[0] = gainedM3;
  loopWater.ofHour[0] = ofHourM3;
  loopWater.judged[0] = 100;
}

/** So many litres of the last hour, after a rise that has been going on for days. */
function risingByHour(): Judge {
  const bench = new RuleBench({ also: ['waterVolume'], values: { waterVolume: 0.27 } });
  return (litres, active) => {
    risingWater(bench.pipeline, 0.01, litres / 1000);
    return judgeGroup(bench.pipeline, 'TANK-4', active);
  };
}

export const groupSwings: Readonly<Record<GroupEntryId, readonly Swing[]>> = {
  'TANK-4': [{ what: 'L that came in within an hour', raises: 0.12, clears: 0.08, judge: risingByHour }],
  'AMB-1': [
    { what: 'Pa from the neighbours', raises: 300, clears: 250, judge: apart },
    { what: 'Pa from the altitude', raises: 6000, clears: 5500, judge: offAltitude },
  ],
  'MARGIN-3': [{ what: 'h until the limit', raises: 8, clears: 10, judge: untilLimit }],
};

export const well: SystemState = {
  evaluationLagS: 0.05,
  threadDelayS: 0.02,
  journalTrouble: null,
  unrecorded: 0,
  historyTrouble: null,
  freeBytes: 40e9,
  diskBytes: 50e9,
};

const program = (id: SystemEntryId, state: (value: number) => Partial<SystemState>) => (): Judge => (value, active) => {
  const entry = systemEntries.find((one) => one.id === id);
  clearFinding(finding);
  entry?.judge({ ...well, ...state(value) }, entry.defaults, active, finding);
  return finding.verdict;
};

export const systemSwings: Readonly<Partial<Record<SystemEntryId, readonly Swing[]>>> = {
  'SYS-1': [
    { what: 's late', raises: 2, clears: 1, judge: program('SYS-1', (evaluationLagS) => ({ evaluationLagS })) },
  ],
  'SYS-4': [
    {
      what: 'GB free of 50',
      raises: 5,
      clears: 6,
      judge: program('SYS-4', (gigabytes) => ({ freeBytes: gigabytes * 1e9 })),
    },
  ],
  'SYS-5': [
    { what: 's of delay', raises: 1, clears: 0.5, judge: program('SYS-5', (threadDelayS) => ({ threadDelayS })) },
  ],
};
