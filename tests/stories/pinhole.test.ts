import { tellStory } from './tell-story';
import { neverAdviseVenting, standing, wordsOf } from './words';

/**
 * A hole of 0.5 L/min shown for an hour and a half stands for one of 6 L a day over three days: simulating days costs too
 * much. It shows the rule, its words and its way to the screen; it does not show that a day is enough for 6 L a day.
 */
const lastsS = 5400;
const litresPerMin = 0.5;

tellStory({
  title: 'the pinhole: facility water that comes in without a top-up is told, with litres and the time of full',
  units: ['N3'],
  startsAt: '2026-03-03T06:00:00Z',
  quietS: 600,
  lastsS,
  everyS: 5,
  happens: [{ atS: 0, command: { fault: 'exchangerPinhole', unit: 'N3', size: 'small', action: 'start' } }],
  mustSee: [
    {
      byS: lastsS,
      what: 'water entering from the facility side',
      see: (seen) => /entering from the facility side/i.test(wordsOf(standing(seen, 'TANK-4'))),
    },
    {
      byS: lastsS,
      // 45 L came in; the mean that is told lags by a quarter of an hour, 7.5 L.
      what: 'how many litres came in, without a top-up',
      see: (seen) => {
        const told = /(\d+) L more than before and no top-up/.exec(wordsOf(standing(seen, 'TANK-4')))?.[1];
        return Math.abs(Number(told) - ((lastsS - 900) / 60) * litresPerMin) < 6;
      },
    },
    {
      byS: lastsS,
      what: 'when the tanks are full',
      see: (seen) => /Tanks full on .*\d\d:\d\d/.test(wordsOf(standing(seen, 'TANK-4'))),
    },
    {
      byS: lastsS,
      what: 'let another unit take the load, hold the exchanger under pressure',
      see: (seen) =>
        /another unit take the load.*isolate the heat exchanger and hold it under pressure/i.test(
          wordsOf(standing(seen, 'TANK-4')),
        ),
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'an overfill, or advice to drain to the mark',
      see: ({ alarms, alerts }) => [...alarms, ...alerts].some(({ action }) => /(^|[.;] )drain/i.test(action)),
    },
  ],
});
