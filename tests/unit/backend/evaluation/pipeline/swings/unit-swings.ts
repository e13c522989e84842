import type { UnitEntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { unitEntries } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../../../../../../backend/src/evaluation/alarm-rules/entry';
import { clearFinding, createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import type { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createContext, fillContext } from '../../../../../../backend/src/evaluation/pipeline/fill-context';
import { modeOfUnit } from '../../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { RuleBench } from '../../alarm-rules/rule-bench';
import type { Judge, Swing } from './swing';

const finding = createFinding();

/** What the rule of an entry says of the bench as it stands. */
export function judgeAlone(bench: RuleBench, id: UnitEntryId, active: boolean): Verdict {
  const entry = unitEntries.find((one) => one.id === id) as UnitEntry;
  const { pipeline } = bench;
  const context = createContext(pipeline);
  fillContext(pipeline, context, 0, modeOfUnit(pipeline.state, context.slots), bench.nowMs);
  context.alarm = pipeline.index.ofUnit(0) + unitEntries.indexOf(entry);
  clearFinding(finding);
  entry.judge(context, entry.defaults, active, finding);
  return finding.verdict;
}

/** The value of one point decides. */
const byPoint = (id: UnitEntryId, point: string, more: Readonly<Record<string, number>> = {}): (() => Judge) => {
  const values = { ...more, [point]: 0 };
  return () => {
    const bench = new RuleBench({ also: Object.keys(values), values });
    return (value, active) => judgeAlone(bench.set(point, value), id, active);
  };
};

const kPa = 1000;
const freeLitresPerMin = 1 / 60_000;

/** Two seconds after the separator pressure has moved by so much, all sources full. */
const afterRise: Judge = (rise, active) => {
  const bench = new RuleBench({ values: { 'separator.pressure': 32 * kPa, 'vacuum.speed': 1, 'vacuum.running': 1 } });
  bench.run(10).set('separator.pressure', 32 * kPa + rise);
  return judgeAlone(bench.run(2), 'AIR-4', active);
};

/** With a permit open that expects 30 free L/min, where there is no other gas. */
function underPermit(): Judge {
  const bench = new RuleBench({ also: ['gasLoad'] });
  const { openPermits } = bench.pipeline;
  openPermits.count[0] = 1;
  openPermits.expectedM3PerS[0] = 30 * freeLitresPerMin;
  openPermits.dueMs[0] = bench.nowMs + 3_600_000;
  return (load, active) => judgeAlone(bench.set('gasLoad', load * freeLitresPerMin), 'PERMIT-1', active);
}

/** After a day of the same values. */
const afterDay =
  (id: UnitEntryId, point: string, more: Readonly<Record<string, number>>): Judge =>
  (value, active) => {
    const commissioned = { pumpEfficiency: 0.5 } as never;
    const values = { ...more, [point]: value };
    const design = { commissioned, ratedHeatW: 200_000, ratedFlowM3PerS: 0.005 };
    const bench = new RuleBench({ also: Object.keys(values), values, design });
    return judgeAlone(bench.hours(24, 300), id, active);
  };

/** A gauge sensor that takes up a share of what the barometer does, over six hours in which that falls by 1.4 kPa. */
const following: Judge = (share, active) => {
  const bench = new RuleBench({ without: ['pump.inlet.pressure', 'return.pressure'], gauge: ['supply.pressure'] });
  for (let minute = 0; minute <= 360; minute += 1) {
    const fell = (1.4 * kPa * minute) / 360;
    bench.set('ambient.pressure', 101.3 * kPa - fell).set('supply.pressure', 84 * kPa - share * fell);
    bench.nowMs += 60_000;
    judgeAlone(bench, 'INS-2', active);
  }
  return judgeAlone(bench, 'INS-2', active);
};

const afresh = (judge: Judge) => (): Judge => judge;

/** Entries of a unit whose limits decide nothing of a plant at rest: the value is moved, and all that it takes for that. */
export const unitSwings: Readonly<Partial<Record<UnitEntryId, readonly Swing[]>>> = {
  'AIR-4': [{ what: 'Pa within five seconds', raises: 300, clears: -100, judge: afresh(afterRise) }],
  'PERMIT-1': [{ what: 'free L/min', raises: 40, clears: 37, judge: underPermit }],
  'TANK-1': [
    { what: 's until empty', raises: 1800, clears: 2100, judge: byPoint('TANK-1', 'timeToEmpty', { 'pump.speed': 1 }) },
  ],
  'PUMP-3': [
    {
      what: 'mean efficiency of a day, 0.5 when commissioned',
      raises: 0.4,
      clears: 0.42,
      judge: afresh(afterDay('PUMP-3', 'pumpEfficiency', { 'transfer.flow': 0.005 })),
    },
  ],
  'HX-1': [
    {
      what: 'mean UA of a day, as a share of clean',
      raises: 0.75,
      clears: 0.78,
      judge: afresh(afterDay('HX-1', 'uaRatio', { 'valve.command': 0.5 })),
    },
    {
      what: 'mean opening of the valve at usual load',
      raises: 0.95,
      clears: 0.9,
      judge: afresh(afterDay('HX-1', 'valve.command', { uaRatio: 1, heatRemoved: 150_000 })),
    },
  ],
  'INS-2': [{ what: 'share of what the barometer does', raises: 0.6, clears: 0.4, judge: afresh(following) }],
  'CHANGE-1': [{ what: 'of the interval', raises: 1, clears: 0.5, judge: byPoint('CHANGE-1', 'inLeakShift') }],
  'CHANGE-2': [{ what: 'of what chance gives', raises: 1, clears: 0.8, judge: byPoint('CHANGE-2', 'patternResidual') }],
};
