import { recordTelemetry } from '../../../../simulator/src/scenario/record-telemetry';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import type { SettledPlants } from '../../../../simulator/src/scenario/unit-plant';
import type { SimulatedMessage } from '../../../../simulator/src/payload/messages';
import { judge, siteWith } from '../../judge-recording';
import type { SingleFault } from '../fault-cases';
import { types } from '../fault-expectation';
import { isSilent, type LongExpectation } from './long-expectation';

const startMs = Date.UTC(2026, 2, 3, 9);
/** As in the short form: alternating tanks have to show what their usual change-overs are. */
const wellForS = (type: SingleFault['type']): number => (type === 'tanks' ? 200 : 60);
/** So long it is looked at for what else is told, after the first, s. */
const besideS = 600;
const settled: SettledPlants = new Map();

/** That a sample of the water is due is told after an hour of any recording: nobody types values in it. */
const ofNoFault = 'CHEM-7';

/** What a person is told, and how long after the fault began, s. An alert stands in the engineer’s list alone. */
export interface ToldLater {
  readonly as: 'alarm' | 'alert';
  readonly entry: string;
  readonly afterS: number;
}

/**
 * One fault run on, second by second of its own time: alarms that stood for themselves and alerts, each once, in the order in which
 * people met them. It ends ten minutes after the first that is no alert `before` it, or when the time of its row is over.
 */
export function runOn({ command, type }: SingleFault, row: LongExpectation): ToldLater[] {
  const wanted = isSilent(row) ? row.silentForS : row.withinS;
  const beginsS = (isSilent(row) ? undefined : row.wellForS) ?? wellForS(type);
  const told = new Map<string, ToldLater>();
  const before: readonly string[] = (isSilent(row) ? undefined : row.before) ?? [];
  let endsS = wanted;
  let isTold = false;
  let nowS = Number.NEGATIVE_INFINITY;
  const recording = {
    seed: 1,
    startMs,
    seconds: beginsS + wanted + besideS,
    units: demoFleet.filter(({ id }) => id === types[type]),
    settled,
    schedule: [{ atS: beginsS, command: { ...command, action: 'start' } }],
  };
  const messages = until(recordTelemetry(recording), () => nowS >= endsS);
  judge(messages, siteWith([types[type]]), (pipeline, nowMs) => {
    nowS = (nowMs - startMs) / 1000 - beginsS;
    const add = (as: ToldLater['as'], id: string, entry: string): void => {
      if (told.has(id)) return;
      if (!isTold && !before.includes(entry)) endsS = nowS + besideS;
      isTold ||= !before.includes(entry);
      told.set(id, { as, entry, afterS: nowS });
    };
    for (const { alarm, entry, active, foldedUnder } of pipeline.standing())
      if (active && foldedUnder === null) add('alarm', alarm, entry);
    for (const { alert, entry } of pipeline.alerts()) if (entry !== ofNoFault) add('alert', alert, entry);
  });
  return [...told.values()];
}

function* until(messages: Iterable<SimulatedMessage>, done: () => boolean): Generator<SimulatedMessage> {
  for (const message of messages) {
    if (done()) return;
    yield message;
  }
}
