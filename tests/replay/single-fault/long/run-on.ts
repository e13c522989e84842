import { recordTelemetry } from '../../../../simulator/src/scenario/record-telemetry';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import type { SettledPlants } from '../../../../simulator/src/scenario/unit-plant';
import type { SimulatedMessage } from '../../../../simulator/src/payload/messages';
import { judge, siteWith } from '../../judge-recording';
import type { SingleFault } from '../fault-cases';
import { types } from '../fault-expectation';

const startMs = Date.UTC(2026, 2, 3, 9);
/** As in the short form: alternating tanks have to show what their usual change-overs are. */
const wellForS = (type: SingleFault['type']): number => (type === 'tanks' ? 200 : 60);
const settled: SettledPlants = new Map();

/** That a sample of the water is due is told after an hour of any recording: nobody types values in it. */
const ofNoFault = 'CHEM-7';

/** What a person is told first, and how long after the fault began, s. An alert stands in the engineer’s list alone. */
export interface ToldFirst {
  readonly as: 'alarm' | 'alert';
  readonly entry: string;
  readonly afterS: number;
}

/** One fault run on, second by second of its own time, until it is told or `lastsS` are over: then null. */
export function runOn({ command, type }: SingleFault, lastsS: number): ToldFirst | null {
  const beginsS = wellForS(type);
  let told: ToldFirst | null = null;
  const recording = {
    seed: 1,
    startMs,
    seconds: beginsS + lastsS,
    units: demoFleet.filter(({ id }) => id === types[type]),
    settled,
    schedule: [{ atS: beginsS, command: { ...command, action: 'start' } }],
  };
  const untilTold = until(recordTelemetry(recording), () => told !== null);
  judge(untilTold, siteWith([types[type]]), (pipeline, nowMs) => {
    const afterS = (nowMs - startMs) / 1000 - beginsS;
    const [alarm] = pipeline.standing().filter(({ active }) => active);
    const alert = pipeline.alerts().find(({ entry }) => entry !== ofNoFault);
    if (alarm !== undefined) told = { as: 'alarm', entry: alarm.entry, afterS };
    else if (alert !== undefined) told = { as: 'alert', entry: alert.entry, afterS };
  });
  return told;
}

function* until(messages: Iterable<SimulatedMessage>, done: () => boolean): Generator<SimulatedMessage> {
  for (const message of messages) {
    if (done()) return;
    yield message;
  }
}
