import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import { tellStory } from './tell-story';
import { callsFor, neverAdviseVenting, standing, valueOf, wordsOf } from './words';

const startsAt = '2026-03-03T09:00:00Z';
const quietS = 300;
const happens = [
  /** The work has moved elsewhere, the servers idle. */
  { atS: -295, command: { fault: 'loadStep', unit: 'N3', size: 'large', direction: 'fall', action: 'start' } },
  { atS: 0, command: { operation: 'isolateBranch', unit: 'N3', branch: 'r5', action: 'start' } },
];

/** The pocket warms and weeps for minutes before its rope is wet: the second in which the gateway says so first. */
function wetAtS(withinS: number): number {
  const startMs = Date.parse(startsAt);
  const telemetry = recordTelemetry({
    seed: 1,
    startMs,
    seconds: quietS + withinS,
    units: demoFleet.filter(({ id }) => id === 'N3'),
    schedule: happens.map(({ atS, ...what }) => ({ ...what, atS: quietS + atS })),
  });
  for (const { payload, sourceMs } of telemetry) {
    if (payload.includes('"rope":"wet"')) return Math.round((sourceMs - startMs) / 1000) - quietS;
  }
  throw new Error(`no rope is wet within ${withinS} s of the isolation`);
}

const wetS = wetAtS(1800);
const isolatedRack = /isolated rack, not protected, (\d+) °C and warming/i;

tellStory({
  title: 'the valved-off rack: its servers idle, and it is told as not protected long before its rope is wet',
  units: ['N3'],
  startsAt,
  quietS,
  lastsS: wetS + 60,
  happens,
  mustSee: [
    {
      byS: 10,
      what: 'an isolated rack that is not protected',
      see: (seen) =>
        standing(seen, 'ISOL-1')?.where === 'Rack 5' &&
        /isolated rack, not protected, \d+ °C/i.test(wordsOf(standing(seen, 'ISOL-1'))),
    },
    {
      byS: wetS + 2,
      what: 'water, at rack 5',
      see: (seen) => standing(seen, 'WATER-1')?.where === 'Rack 5' && standing(seen, 'WATER-1')?.priority === 1,
    },
    {
      byS: wetS + 2,
      what: 'the rope of the rack, wet',
      see: (seen) => valueOf(seen, 'N3', 'branch.r5.water.found') === 1,
    },
    {
      byS: wetS + 10,
      what: 'beside the water the isolated rack, how hot it is and that it warms',
      see: (seen) => {
        const told = isolatedRack.exec(wordsOf(standing(seen, 'ISOL-1')))?.[1];
        return Math.abs(Number(told) - valueOf(seen, 'N3', 'branch.r5.return.temperature')) < 1;
      },
    },
    {
      byS: wetS + 10,
      what: 'power off its servers, then relieve it to the loop',
      see: (seen) => {
        const action = standing(seen, 'ISOL-1')?.action ?? '';
        const ofWater = wordsOf(standing(seen, 'WATER-1'));
        return [action, ofWater].every((words) => /power off (the|its) servers.*relieve it to the loop/i.test(words));
      },
    },
    {
      byS: wetS + 10,
      what: 'that the margin of the loop, which is good, does not hold for the wet rack',
      see: (seen) =>
        valueOf(seen, 'N3', 'vacuumMargin') > 10_000 &&
        /Rack 5 is isolated and not protected by the loop’s margin/.test(wordsOf(standing(seen, 'WATER-1'))),
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'that no water can leave',
      see: ({ alarms, alerts }) =>
        [...alarms, ...alerts].some((one) => /margin (is )?good|no water can (leave|come)/i.test(wordsOf(one))),
    },
    {
      what: 'to stop the row',
      see: ({ alarms }) =>
        alarms.some(({ action }) => /(^|[.;,] )(stop|shut down|power off|switch off) the row/i.test(action)),
    },
    callsFor('MARGIN-1', 'a margin alarm, as no margin moves'),
    callsFor('FLOW-3', 'a branch flow alarm, as the branch was shut on purpose'),
  ],
});
