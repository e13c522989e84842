import { tellStory } from './tell-story';
import { calledFor, neverAdviseVenting, standing, valueOf, wordsOf } from './words';

/** The trap's float sticks so long after the seal water began to warm. */
const stuckS = 480;
const litrePerMin = 1 / 60_000;

tellStory({
  title:
    'the hot afternoon: warm seal water and a stuck trap float take the vacuum source’s capacity, and nobody looks for a leak',
  units: ['N3'],
  startsAt: '2026-07-14T13:00:00Z',
  quietS: 120,
  lastsS: 780,
  happens: [
    // 25 to 40 °C at 32 kPa: 1 − ((p_v + 1 kPa)/p)^1.5 falls from 0.95 to 0.86, and the gas that is drawn in is warmer.
    { atS: 0, command: { fault: 'sealWaterWarm', unit: 'N3', size: 'usual', action: 'start' } },
    { atS: stuckS, command: { fault: 'trapFloatStuck', unit: 'N3', size: 'large', action: 'start' } },
  ],
  mustSee: [
    {
      byS: 470,
      what: 'less capacity at the same gas load: a reserve that was 275 and is 40 smaller',
      see: (seen) => {
        const reserve = valueOf(seen, 'N3', 'vacuumReserve') / litrePerMin;
        return reserve > 220 && reserve < 255;
      },
    },
    {
      byS: 780,
      what: 'reserve below one hose',
      see: (seen) => /reserve below one open hose.*counted as no open hose/i.test(wordsOf(standing(seen, 'AIR-3'))),
    },
    {
      byS: 780,
      what: 'that the capacity is down, as the seal water is at 40 °C and water stands in the trap',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'AIR-3'));
        return /capacity is down/i.test(words) && /seal water is at (39|40|41) °C/i.test(words) && /trap/i.test(words);
      },
    },
    {
      byS: 780,
      what: 'to start the second source and look at the seal water and its cooler',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'AIR-3'));
        return /start.*second (vacuum )?source/i.test(words) && /seal (water )?cooler/i.test(words);
      },
    },
    {
      byS: 780,
      what: 'the exhaust no higher than before',
      see: (seen) => valueOf(seen, 'N3', 'vacuum.exhaustFlow') < 8 * litrePerMin,
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'a leak to be looked for',
      see: (seen) => calledFor(seen).some((entry) => ['AIR-1', 'AIR-2', 'AIR-4', 'PERMIT-1'].includes(entry)),
    },
    {
      what: 'that somebody is to find a leak',
      see: ({ alarms, alerts }) =>
        [...alarms, ...alerts].some((one) => /(find|look for|search for) (the|a) leak/i.test(wordsOf(one))),
    },
  ],
});
