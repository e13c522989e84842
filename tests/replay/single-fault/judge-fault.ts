import { demoFleet } from '../../../simulator/src/scenario/demo-fleet';
import type { SettledPlants } from '../../../simulator/src/scenario/unit-plant';
import { judgeRecording } from '../judge-recording';
import type { SingleFault } from './fault-cases';
import { types } from './fault-expectation';

const startMs = Date.UTC(2026, 2, 3, 9);
/** So long the unit runs well before: alternating tanks have to show what their usual change-overs are. */
const wellForS = (type: SingleFault['type']): number => (type === 'tanks' ? 200 : 60);
const lastsS = 300;

/** Each unit settles once, not once a case. */
const settled: SettledPlants = new Map();

export interface Told {
  readonly entry: string;
  readonly where: string | null;
  /** From the beginning of the fault, s. */
  readonly afterS: number;
}

export interface JudgedFault {
  /** Alarms that stood for themselves, under no first-out, at any second: in the order in which the operator met them, each once. */
  readonly told: readonly Told[];
  /** Entries that were told a second time, after they had gone. */
  readonly again: readonly string[];
  readonly alerts: readonly string[];
  readonly refused: Readonly<Record<string, number>>;
}

/** One fault of one unit, recorded by the simulator and judged by the pure pipeline. */
export function judgeFault({ command, type }: SingleFault): JudgedFault {
  const beginsS = wellForS(type);
  const told = new Map<string, Told>();
  const { alerted, refused, transitions } = judgeRecording(
    {
      seed: 1,
      startMs,
      seconds: beginsS + lastsS,
      units: demoFleet.filter(({ id }) => id === types[type]),
      settled,
      schedule: [{ atS: beginsS, command: { ...command, action: 'start' } }],
    },
    (pipeline, nowMs) => {
      for (const { alarm, entry, where, active, foldedUnder } of pipeline.standing())
        if (active && foldedUnder === null && !told.has(alarm))
          told.set(alarm, { entry, where, afterS: (nowMs - startMs) / 1000 - beginsS });
    },
  );
  const again = transitions.filter(
    ({ from, to, foldedUnder }) => from === 'returnedUnacknowledged' && to === 'unacknowledged' && foldedUnder === null,
  );
  return {
    told: [...told.values()],
    again: entriesOf(again),
    alerts: [...new Set(alerted.map((alert) => alert.split(':')[1] ?? alert))].sort(),
    refused,
  };
}

const entriesOf = (rows: readonly { readonly entry: string }[]): string[] =>
  [...new Set(rows.map(({ entry }) => entry))].sort();
