import type { Seen } from './story';
import { tellStory } from './tell-story';
import { alerted, callsFor, neverAdviseVenting, standing, standsAlone, wordsOf } from './words';

const hourS = 3600;
const quietS = 600;
const startsAt = '2026-11-10T17:50:00Z';
/** Absolute set points that leave each unit some 2.5 kPa above its limit: the low takes 2.8 kPa in twelve hours. */
const supplyTankKPa = { N1: 77.7, N2: 78.35, N3: 78.35 };
const units = Object.keys(supplyTankKPa);

/** Minutes from the moment that is told as the margin's end to five in the morning, when the first margin is at its limit. */
const minutesFromFive = (seen: Seen): number => {
  const told = /Margin to limit at (2026-11-11 )?(\d\d):(\d\d)/.exec(wordsOf(alerted(seen, 'MARGIN-3')));
  return Math.abs(Number(told?.[2]) * 60 + Number(told?.[3]) - 5 * 60);
};

tellStory({
  title:
    'the deep low: when margins end is told hours ahead and once, and the gauge that follows the barometer is found',
  units,
  startsAt,
  quietS,
  lastsS: 12.5 * hourS,
  // What weather does to a plant it does within seconds: two of each minute are enough.
  lapse: { everyS: 60, runS: 2, untilS: 13 * hourS },
  happens: [
    ...Object.entries(supplyTankKPa).map(([unit, kPa]) => ({
      atS: 1 - quietS,
      command: { operation: 'setSupplyTank', unit, value: String(kPa), action: 'start' },
    })),
    { atS: 0, command: { fault: 'deepLow', unit: 'site', size: 'usual', action: 'start' } },
    {
      atS: 0,
      command: { fault: 'ventPlugged', unit: 'N1', point: 'supply.pressure', size: 'large', action: 'start' },
    },
  ],
  mustSee: [
    {
      byS: 6 * hourS,
      what: 'when the first margin is at its limit, five hours ahead, and that it is the barometer',
      see: (seen) =>
        minutesFromFive(seen) < 120 && /barometer stands \d\.\d kPa below/.test(wordsOf(alerted(seen, 'MARGIN-3'))),
    },
    {
      byS: 6 * hourS,
      what: 'the sensor that follows the barometer',
      see: (seen) => {
        const told = seen.alerts.filter(({ entry }) => entry === 'INS-2');
        return told.length === 1 && told[0]?.unit === 'N1' && /^supply.pressure follows/.test(told[0].detail ?? '');
      },
    },
    {
      byS: 9 * hourS,
      what: 'the same moment to within the hour, two hours ahead',
      see: (seen) => minutesFromFive(seen) < 60,
    },
    {
      byS: 12.5 * hourS,
      what: 'the margins of all units at their limits, told as one',
      see: (seen) =>
        units.every((unit) => standing(seen, 'MARGIN-1', unit) !== undefined) &&
        seen.alarms.filter((alarm) => alarm.entry === 'MARGIN-1' && standsAlone(alarm)).length === 1,
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    callsFor('AMB-1', 'a faulty barometer'),
    { what: 'an alert of a faulty barometer', see: (seen) => alerted(seen, 'AMB-1') !== undefined },
    {
      what: 'each unit alarming singly',
      see: ({ alarms }) => alarms.filter((alarm) => alarm.entry === 'MARGIN-1' && standsAlone(alarm)).length > 1,
    },
    {
      what: 'each unit’s forecast by itself',
      see: ({ alerts }) => alerts.filter(({ entry }) => entry === 'MARGIN-3').length > 1,
    },
  ],
});
