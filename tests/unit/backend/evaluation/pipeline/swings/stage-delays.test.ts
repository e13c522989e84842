import { describe, expect, it } from 'vitest';
import { groupStep } from '../../../../../../backend/src/evaluation/pipeline/group-step';
import { judgeGateways } from '../../../../../../backend/src/evaluation/pipeline/judge-gateways';
import { judgeInstruments } from '../../../../../../backend/src/evaluation/pipeline/judge-instruments';
import { judgeSystem } from '../../../../../../backend/src/evaluation/pipeline/judge-system';
import {
  createPipelineState,
  type PipelineState,
} from '../../../../../../backend/src/evaluation/pipeline/pipeline-state';
import type { SystemState } from '../../../../../../backend/src/evaluation/alarm-rules/system-state';
import { reasonBit } from '../../../../../../backend/src/evaluation/slots/quality-reasons';
import { entryIds, unitEntryIds } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { RuleBench } from '../../alarm-rules/rule-bench';
import { plantSite, startMs } from '../plant';
import { risingWater, seaLevelPa, setBarometers, threeHalls, well } from './group-and-program-swings';

/** What is judged once a second beside units: the plant with its condition there or gone, and the stage that judges it. */
interface Stage {
  readonly pipeline: PipelineState;
  readonly step: (isThere: boolean, nowMs: number) => void;
}

interface Row {
  readonly id: string;
  /** The entry's delays, written by hand, s. */
  readonly on: number;
  readonly off: number;
  readonly make: () => Stage;
}

const ofProgram =
  (trouble: Partial<SystemState>): Row['make'] =>
  () => {
    const pipeline = createPipelineState(plantSite(), 'wall');
    return {
      pipeline,
      step(isThere, nowMs) {
        pipeline.system = isThere ? { ...well, ...trouble } : well;
        judgeSystem(pipeline, nowMs);
      },
    };
  };

/** A barometer goes 0.4 kPa off those of two other halls. */
function barometerOff(): Stage {
  const pipeline = threeHalls();
  return {
    pipeline,
    step(isThere, nowMs) {
      setBarometers(pipeline, [seaLevelPa + (isThere ? 400 : 0), seaLevelPa, seaLevelPa]);
      groupStep(pipeline, nowMs);
    },
  };
}

function marginFalls(): Stage {
  const bench = new RuleBench({ also: ['marginTimeToLimit'] });
  return {
    pipeline: bench.pipeline,
    step(isThere, nowMs) {
      bench.set('marginTimeToLimit', (isThere ? 7 : 11) * 3600);
      groupStep(bench.pipeline, nowMs);
    },
  };
}

function waterRises(): Stage {
  const bench = new RuleBench({ also: ['waterVolume'], values: { waterVolume: 0.27 } });
  return {
    pipeline: bench.pipeline,
    step(isThere, nowMs) {
      risingWater(bench.pipeline, isThere ? 0.004 : 0.002, isThere ? 0.0002 : 0);
      groupStep(bench.pipeline, nowMs);
    },
  };
}

/** A point that feeds a priority 1, of a gateway that goes on sending. */
function pointLost(): Stage {
  const pipeline = createPipelineState(plantSite(), 'wall');
  pipeline.startedMs = startMs - 3_600_000;
  pipeline.state.reasons.fill(0);
  pipeline.gatewayHeardMs.fill(startMs);
  const { halls, units } = pipeline.site;
  return {
    pipeline,
    step(isThere, nowMs) {
      const slot = pipeline.unitSlots[0]?.separatorPressure ?? -1;
      pipeline.state.reasons[slot] = isThere ? reasonBit.outOfRange : 0;
      judgeInstruments(pipeline, units[0]?.holder ?? halls.length, nowMs);
    },
  };
}

/** A gateway that says by its status that it is gone, or speaks. */
function gatewayGone(): Stage {
  const pipeline = createPipelineState(plantSite(), 'wall');
  pipeline.startedMs = startMs - 3_600_000;
  return {
    pipeline,
    step(isThere, nowMs) {
      // Silent for 5.001 s, where 5 s are the limit; or just heard.
      pipeline.gatewayHeardMs[0] = isThere ? nowMs - 5001 : nowMs;
      judgeGateways(pipeline, nowMs);
    },
  };
}

const rows: readonly Row[] = [
  { id: 'TANK-4', on: 900, off: 3600, make: waterRises },
  { id: 'AMB-1', on: 600, off: 600, make: barometerOff },
  { id: 'MARGIN-3', on: 300, off: 900, make: marginFalls },
  { id: 'INS-1', on: 2, off: 5, make: pointLost },
  { id: 'COM-1', on: 0, off: 3, make: gatewayGone },
  { id: 'SYS-1', on: 30, off: 10, make: ofProgram({ evaluationLagS: 3 }) },
  { id: 'SYS-2', on: 2, off: 2, make: ofProgram({ journalTrouble: 'the disk is full' }) },
  { id: 'SYS-3', on: 30, off: 10, make: ofProgram({ historyTrouble: 'the disk is full' }) },
  { id: 'SYS-4', on: 10, off: 60, make: ofProgram({ freeBytes: 4e9 }) },
  { id: 'SYS-5', on: 30, off: 10, make: ofProgram({ threadDelayS: 2 }) },
];

/** One stage, second by second; alarms and alerts are told alike here. */
class Waves {
  private readonly stage: Stage;
  private nowMs = startMs;
  private told = 0;
  private over = 0;

  constructor(private readonly row: Row) {
    this.stage = row.make();
    this.send(false, 1);
  }

  send(isThere: boolean, ticks: number): this {
    for (let tick = 0; tick < ticks; tick += 1) {
      this.nowMs += 1000;
      const { alertChanges, transitions } = this.stage.pipeline;
      transitions.length = 0;
      alertChanges.length = 0;
      this.stage.step(isThere, this.nowMs);
      const alarms = transitions.filter(({ entry }) => entry === this.row.id);
      const alerts = alertChanges.filter(({ alert }) => alert.entry === this.row.id);
      this.told += alarms.filter(({ to }) => to === 'unacknowledged').length;
      this.told += alerts.filter(({ what }) => what === 'came').length;
      this.over += alarms.filter(({ cause }) => cause === 'conditionClear').length;
      this.over += alerts.filter(({ what }) => what === 'went').length;
    }
    return this;
  }

  get seen(): readonly [told: number, over: number] {
    return [this.told, this.over];
  }
}

describe('the stages that judge beside units', () => {
  it('are waved at with every entry that is none of a unit', () => {
    const others = entryIds.filter((id) => !(unitEntryIds as readonly string[]).includes(id));
    expect(rows.map(({ id }) => id).sort()).toEqual([...others].sort());
  });

  // A condition that lasts n ticks is seen at n moments, the last of them n − 1 ticks after the first.
  it.each(rows.filter(({ on }) => on > 0).map((row) => [row.id, row] as const))(
    'tell nothing of %s that lasts a tick too short, however often, and once what lasts a tick longer',
    (_, row) => {
      const waves = new Waves(row);
      for (let i = 0; i < 3; i += 1) waves.send(true, row.on).send(false, 1);
      expect(waves.seen).toEqual([0, 0]);
      expect(waves.send(true, row.on + 1).seen).toEqual([1, 0]);
      expect(waves.send(true, row.on + 20).seen).toEqual([1, 0]);
    },
  );

  it.each(rows.map((row) => [row.id, row] as const))(
    'end nothing of %s that is gone a tick too short, however often, and once what is gone a tick longer',
    (_, row) => {
      const waves = new Waves(row).send(true, row.on + 1);
      expect(waves.seen).toEqual([1, 0]);
      for (let i = 0; i < 3; i += 1) waves.send(false, row.off).send(true, 1);
      expect(waves.seen).toEqual([1, 0]);
      expect(waves.send(false, row.off + 1).seen).toEqual([1, 1]);
      expect(waves.send(false, row.off + 20).seen).toEqual([1, 1]);
    },
  );

  it('tell of a gateway that is silent for a millisecond more than its limit, and not at the limit', () => {
    const { pipeline } = gatewayGone();
    pipeline.gatewayHeardMs[0] = startMs;
    judgeGateways(pipeline, startMs + 5000);
    expect(pipeline.transitions).toEqual([]);
    judgeGateways(pipeline, startMs + 5001);
    expect(pipeline.transitions).toMatchObject([{ entry: 'COM-1', to: 'unacknowledged' }]);
  });
});
