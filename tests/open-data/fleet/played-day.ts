import type { PlayedMessage } from '../../helpers/player';
import { messageOf, timeSignal } from './fleet-site';
import type { Fleet, FleetReading } from './read-fleet';

export const at = (time: string): number => Date.parse(`2025-06-03T${time}Z`);
export const dayStartMs = at('00:00:00');
export const dayEndMs = dayStartMs + 86_400_000;
/** When the nodes fell silent and when some came back, as the source's documentation and the data tell it. */
export const silentMs = at('02:37:11');
export const returnMs = at('21:55:02');

export interface PlayedDay {
  /** What is told once, in the order of time; the two readings that the test adds are among them. */
  readonly readings: readonly FleetReading[];
  /** Those of them that are told twice. */
  readonly repeated: readonly FleetReading[];
  readonly signals: readonly PlayedMessage[];
  readonly messages: readonly PlayedMessage[];
  /** A row in which the source gave no reading: its own mark `NR` in every column. Not in the data of this day. */
  readonly noReading: FleetReading;
  /** One true wet sensor. In the data every sensor is dry all day. */
  readonly wet: FleetReading;
}

/** Every so manieth message is sent twice, as a gateway does that was not sure: the stated duplicates. */
const twiceEach = 250;

/** The readings from `fromMs` to `toMs` as they are played. */
export function playedDay({ readings }: Fleet, fromMs: number, toMs: number): PlayedDay {
  const ofDay = readings.filter(({ atMs }) => atMs >= fromMs && atMs < toMs);
  const before = (atMs: number, place: number): FleetReading => {
    const reading = ofDay.filter((one) => one.atMs < atMs).at(-place);
    if (reading === undefined) throw new Error('the day has nothing before what is added to it');
    return reading;
  };
  const [dry, heard] = [before(at('02:00:30'), 50), before(at('02:10:30'), 2)];
  const wet = { ...dry, atMs: at('02:00:30'), cells: { ...dry.cells, drip1: '0x01' } };
  const marked = Object.fromEntries(Object.keys(heard.cells).map((column) => [column, 'NR']));
  const noReading = { ...heard, atMs: at('02:10:30'), cells: marked };
  const told = [...ofDay, wet, noReading].sort((a, b) => a.atMs - b.atMs);
  const repeated = told.filter((reading, i) => i % twiceEach === 0 && reading !== noReading);
  const signals = timeSignals(fromMs, toMs);
  const messages = [...told, ...repeated].map(messageOf).concat(signals);
  return {
    readings: told,
    repeated,
    signals,
    messages: messages.sort((a, b) => a.sourceMs - b.sourceMs),
    noReading,
    wet,
  };
}

/** Every 5 s about the outage and the return, else each half hour: time must go on where all nodes are silent. */
function timeSignals(fromMs: number, toMs: number): PlayedMessage[] {
  const dense = [
    [at('02:36:00'), at('02:45:00')],
    [at('21:53:00'), at('22:00:00')],
  ] as const;
  const times = [toMs + 10_000];
  for (let ms = fromMs; ms < toMs; ms += 5000) {
    if (ms % 1_800_000 === 0 || dense.some(([from, to]) => ms >= from && ms < to)) times.push(ms);
  }
  return times.map(timeSignal);
}
