import { tellStory } from './tell-story';
import { callsFor, neverAdviseVenting, standing, standsAlone, valueOf, wordsOf } from './words';

const tanks = (seen: Parameters<typeof valueOf>[0], unit: string): number => valueOf(seen, unit, 'waterVolume');

tellStory({
  title: 'the walk: one separator sensor drifts, and water that goes from one unit to the other is told as no loss',
  units: ['N8', 'N9'],
  startsAt: '2026-03-03T03:00:00Z',
  quietS: 180,
  lastsS: 300,
  happens: [
    {
      atS: 0,
      // 1 kPa: the regulator holds the reading, so the separator itself goes off the other way.
      command: {
        fault: 'sensorDrift',
        unit: 'N8',
        point: 'separator.pressure',
        size: 'small',
        direction: 'rise',
        action: 'start',
      },
    },
  ],
  mustSee: [
    {
      byS: 120,
      what: 'sum constant: water is moving from the one to the other',
      see: (seen) => {
        const told = standing(seen, 'TANK-2');
        return told?.unit === 'N8' && /Sum constant: water is moving from Unit N9 to Unit N8/.test(wordsOf(told));
      },
    },
    {
      byS: 120,
      what: 'that nothing has leaked and that the two separator pressures are to be compared',
      see: (seen) => /nothing has leaked; compare their separator pressures/i.test(wordsOf(standing(seen, 'TANK-2'))),
    },
    {
      byS: 300,
      what: 'one level lower and one higher by the same',
      see: (seen) => tanks(seen, 'N8') - tanks(seen, 'N9') > 0.04,
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'to top up, in any call or alert of either unit, without the word that it is not to be done',
      see: ({ alarms, alerts }) =>
        [...alarms.filter(standsAlone), ...alerts].some(
          ({ action, detail }) =>
            /\btop up\b/i.test(`${action} ${detail ?? ''}`) && !/do not top up/i.test(detail ?? ''),
        ),
    },
    {
      what: 'that the loop loses water, anywhere',
      see: ({ alarms, alerts }) => [...alarms, ...alerts].some((one) => /loses water/i.test(wordsOf(one))),
    },
    callsFor('TANK-4', 'water from the facility side, as the sum stands'),
    callsFor('WATER-1', 'water, as none has left'),
    callsFor('AIR-1', 'air, as none comes in'),
  ],
});
