import type { PlayedMessage } from '../../helpers/player';
import { placeholderLoop } from '../player/placeholder-loop';
import { type Fleet, type FleetReading, pointOfColumn } from './read-fleet';

/** Single samples of 25,450 or 25,550 W are a code of the source for full scale; the range lies below both. */
const power = { unit: 'W', range: '0 to 20000 W' };

/**
 * The source sends once a minute and a gateway counts as silent after three periods of its points. This site wants to know
 * within two minutes, so that one missing message is borne and two are not: the period is stated as 38 s.
 */
const period = '38 s';

const points: Readonly<Record<string, object>> = {
  inlet_water_c: { unit: '°C', range: '0 to 90 °C' },
  chassis_w: power,
  psu_w: power,
  sys_w: power,
  // 0x00 is dry. What a wet one says is not in the data; any other word is refused, and is not wet.
  drip1: { words: { '0x00': 'no', '0x01': 'yes' } },
  drip2: { words: { '0x00': 'no', '0x01': 'yes' } },
};

export const topicOf = ({ node }: Pick<FleetReading, 'node'>): string => `fleet/${node.gateway}/${node.id}`;

export function messageOf(reading: FleetReading): PlayedMessage {
  const payload = JSON.stringify({ time: new Date(reading.atMs).toISOString(), ...reading.cells });
  return { topic: topicOf(reading), payload, sourceMs: reading.atMs };
}

/** Every node as a unit of its own, with the points that it is fitted with, and one more unit that keeps the time. */
export const fleetSite = ({ nodes }: Fleet): object => ({
  site: { id: 'fleet', name: 'Replayed computer hall', timeZone: 'Etc/UTC', altitude: '0 m' },
  templates: { node: { ...placeholderLoop, branches: { node: {} }, plates: { board: {} } } },
  halls: { hall: { name: 'Hall' } },
  gateways: Object.fromEntries(nodes.map(({ gateway }) => [gateway, {}])),
  units: {
    timekeeper: timekeeperUnit('hall'),
    ...Object.fromEntries(
      nodes.map((node) => [
        node.id,
        {
          name: node.id,
          hall: 'hall',
          template: 'node',
          gateway: node.gateway,
          topic: topicOf({ node }),
          time: { path: 'time', form: 'iso' },
          points: Object.fromEntries(
            node.fitted.map((column) => [pointOfColumn[column], { ...points[column], path: column, period }]),
          ),
        },
      ]),
    ),
  },
});

/** A unit of the test's own that says once in a while that time goes on: on the source clock nobody else does in an outage. */
const timekeeperUnit = (hall: string): object => ({
  name: 'Keeps the time of the replay',
  hall,
  template: 'node',
  topic: 'timekeeper',
  time: { path: 'time', form: 'iso' },
  points: { mode: { path: 'mode', period: '30 min' } },
});

export const timeSignal = (atMs: number): PlayedMessage => ({
  topic: 'timekeeper',
  payload: JSON.stringify({ time: new Date(atMs).toISOString(), mode: 'running' }),
  sourceMs: atMs,
});
