import { tellStory } from './tell-story';
import { callsFor, neverAdviseVenting, standing, valueOf, wordsOf } from './words';

const units = ['N1', 'N2', 'N3'];

const within = (value: number | undefined, least: number, most: number): boolean =>
  value !== undefined && value >= least && value <= most;

tellStory({
  title: 'the chiller trip: lost facility water is told by its flow at once, and every warm supply folds under it',
  units,
  startsAt: '2026-03-03T11:00:00Z',
  quietS: 660,
  lastsS: 240,
  happens: units.map((unit) => ({
    atS: 0,
    command: {
      fault: 'facilityFlowLost',
      unit,
      size: 'large',
      action: 'start',
    },
  })),
  mustSee: [
    { byS: 5, what: 'facility flow lost', see: (seen) => standing(seen, 'FAC-1') !== undefined },
    {
      byS: 6,
      what: 'facility flow lost, at every unit',
      see: (seen) => units.every((unit) => standing(seen, 'FAC-1', unit) !== undefined),
    },
    {
      byS: 5,
      // Stored water: some 78 L at 345 L/min. Plates: 347 J/K × (95 − 50) K ÷ 200 to 300 W. Fans settle at 27 °C + 0.167 K/W.
      what: 'three clocks: stored water, plates to their limit, and fans, which hold these chips below it',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'FAC-1'));
        const [water, plates, fans] = [
          /stored water (\d+) s/,
          /plates to their limit (\d+) s/,
          /chips on fans alone at (\d+) °C/,
        ].map((clock) => Number(clock.exec(words)?.[1]));
        return within(water, 10, 18) && within(plates, 40, 100) && within(fans, 55, 80);
      },
    },
    {
      byS: 5,
      what: 'the clocks of each unit; none on fans where fans hold every plate below its limit',
      see: (seen) =>
        units.every(
          (unit) =>
            within(valueOf(seen, unit, 'rideThroughFlow'), 10, 18) &&
            within(valueOf(seen, unit, 'rideThroughPlate'), 40, 100) &&
            seen.reading(unit, 'rideThroughFans')?.reasons.includes('notApplicable') === true,
        ),
    },
    {
      byS: 5,
      what: 'shed load and call the plant room',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'FAC-1'));
        return /shed load/i.test(words) && /call the plant/i.test(words);
      },
    },
    {
      byS: 5,
      what: 'all of it as one event, long before the supply has warmed by 2 K for a minute',
      see: (seen) =>
        seen.alarms.filter(({ foldedUnder }) => (foldedUnder ?? null) === null).length === 1 &&
        standing(seen, 'TSUP-1') === undefined,
    },
    {
      byS: 120,
      what: 'the warm supply, folded under the lost flow',
      see: (seen) =>
        seen.alarms.some(({ entry, foldedUnder }) => /^TSUP/.test(entry) && /FAC-1$/.test(foldedUnder ?? '')),
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    callsFor('TSUP-1', 'a supply temperature alarm beside the lost flow'),
    callsFor('TSUP-2', 'a supply temperature alarm beside the lost flow'),
    callsFor('MARGIN-1', 'a margin alarm, as no margin moves'),
  ],
});
