import { tellStory } from './tell-story';
import { calledFor, neverAdviseVenting, standing, wordsOf } from './words';

const hourS = 3600;
/** The plant runs one second of each two minutes, so a hole of 0.5 L/min lets in 6 L a day of the time that is told. */
const lapse = { everyS: 120, runS: 1, untilS: 20 * hourS };
const litresPerHour = (0.5 * 60 * lapse.runS) / lapse.everyS;
const litres = (litresPerHour * lapse.untilS) / hourS;

tellStory({
  title: 'the pinhole: 6 L of facility water a day are told within a day, with litres and the date of full',
  units: ['N3'],
  startsAt: '2026-03-03T00:00:00Z',
  quietS: 2 * hourS,
  lastsS: lapse.untilS + 60,
  lapse,
  happens: [{ atS: 0, command: { fault: 'exchangerPinhole', unit: 'N3', size: 'small', action: 'start' } }],
  mustSee: [
    {
      byS: lapse.untilS,
      what: 'water entering from the facility side',
      see: (seen) => /entering from the facility side/i.test(wordsOf(standing(seen, 'TANK-4'))),
    },
    {
      byS: lapse.untilS,
      // The first half hour and some of the noise are missing from it.
      what: 'how many litres came in, without a top-up',
      see: (seen) => {
        const told = /([\d.]+) L more than before and no top-up/.exec(wordsOf(standing(seen, 'TANK-4')))?.[1];
        return Math.abs(Number(told) - litres) < litres / 3;
      },
    },
    {
      byS: lapse.untilS,
      what: 'the date on which the tanks are full, days ahead',
      see: (seen) => /Tanks full on 2026-03-(0[89]|[12]\d) \d\d:\d\d/.test(wordsOf(standing(seen, 'TANK-4'))),
    },
    {
      byS: lapse.untilS,
      // Facility water of 800 µS/cm: each litre in 488 L raises it by 1.6 µS/cm.
      what: 'conductivity drifting',
      see: (seen) => {
        const [, then, now] = /from (\d+) to (\d+) µS\/cm/.exec(wordsOf(standing(seen, 'TANK-4'))) ?? [];
        return Math.abs(Number(now) - Number(then) - 1.6 * litres) < 3;
      },
    },
    {
      byS: lapse.untilS,
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
    { what: 'a leak of air to be looked for', see: (seen) => calledFor(seen).some((entry) => /^AIR/.test(entry)) },
  ],
});
