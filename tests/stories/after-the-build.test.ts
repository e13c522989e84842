import { tellStory } from './tell-story';
import { alerted, calledFor, neverAdviseVenting, standing, standsAlone, valueOf, wordsOf } from './words';

const hourS = 3600;
/** Days are told once in a minute and a half and run a thirtieth of it; the filter ages as much faster. */
const lapse = { everyS: 90, runS: 3, untilS: 65 * hourS };
const paceOfLife = lapse.everyS / lapse.runS;
/** The last of its area goes fast: that is shown in half an hour instead of two days. */
const paceAtLast = 80;

const age = (atS: number, timesAsFast: number) => ({
  atS,
  command: {
    operation: 'age',
    unit: 'N1',
    part: 'filterAfterWorks',
    timesAsFast: String(timesAsFast),
    action: 'start',
  },
});

const minutesLeft = (words: string): number =>
  Number(/Tank empty at \d\d:\d\d, in (\d+) min/.exec(words)?.[1] ?? Number.NaN);

tellStory({
  title: 'after the build: a filter loads in three days, and it is told two days before the supply tank runs empty',
  units: ['N1'],
  startsAt: '2026-03-03T09:00:00Z',
  quietS: 600,
  lastsS: lapse.untilS + 900,
  lapse,
  happens: [age(0, paceOfLife), age(lapse.untilS, paceAtLast)],
  mustSee: [
    {
      // The tank falls from 64 h on, 1.1 × 2^(64/72) = 2.04 times clean; two days before that are 16 h.
      byS: 14 * hourS,
      what: 'that the filter is loading, two days before, and the days of twice and three times clean',
      see: (seen) => {
        const words = wordsOf(alerted(seen, 'FIL-1'));
        const day = /2 times clean at 2026-03-0(\d) \d\d:\d\d, 3 times at 2026-03-(\d\d) \d\d:\d\d/.exec(words);
        // Twice clean at 62 h is on the 6th; a straight line through the first half day says the 5th or 6th.
        return /filter is loading/i.test(words) && ['5', '6'].includes(day?.[1] ?? '') && Number(day?.[2]) > 6;
      },
    },
    {
      byS: lapse.untilS,
      what: 'flow and chips as ever, and a pump that can give no more',
      see: (seen) => valueOf(seen, 'N1', 'pump.speed') > 0.97 && valueOf(seen, 'N1', 'flowShare') > 0.95,
    },
    {
      byS: lapse.untilS + 600,
      what: 'when the supply tank is empty, more than three minutes before, and by what',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'TANK-1'));
        return minutesLeft(words) > 3 && /filter is at 2\.\d times its clean resistance/i.test(words);
      },
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'a flow alarm as the first sign',
      see: (seen) => /^FLOW/.test(calledFor(seen)[0] ?? ''),
    },
    {
      what: 'to top up, as no water is missing',
      see: ({ alarms }) =>
        alarms.some(
          (alarm) => alarm.entry === 'TANK-3' && standsAlone(alarm) && /loses water/.test(alarm.detail ?? ''),
        ),
    },
  ],
});
