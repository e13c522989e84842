import { tellStory } from './tell-story';
import { callsFor, neverAdviseVenting, standing, wordsOf } from './words';

const units = ['N1', 'N2', 'N3'];

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
      what: 'shed load and call the plant room',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'FAC-1'));
        return /shed load/i.test(words) && /call the plant/i.test(words);
      },
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
