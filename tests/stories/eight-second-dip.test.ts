import { callsFor, neverAdviseVenting, raisedRows, standing, valueOf, wordsOf } from './words';
import type { Seen } from './story';
import { tellStory } from './tell-story';

const dipS = 8;
/** The supply tank runs down, is filled again, and its gas has nowhere to go: about so long after the dip began the supply side is above ambient. */
const goneByS = 20;
const modes = { powerReturn: 11 };

/** Roots of the list: what calls for somebody by itself. */
const firstOuts = ({ alarms }: Seen): string[] =>
  alarms.filter(({ foldedUnder }) => (foldedUnder ?? null) === null).map(({ entry }) => entry);

tellStory({
  title: 'the eight-second dip: the vent sticks on restart, and the margin that it takes is told whatever the mode',
  units: ['N3'],
  startsAt: '2026-03-03T15:00:00Z',
  quietS: 120,
  lastsS: 60,
  happens: [
    { atS: 0, command: { fault: 'powerFailure', unit: 'N3', size: 'small', option: 'bleedOpen', action: 'start' } },
    { atS: dipS, command: { fault: 'ventStuck', unit: 'N3', size: 'usual', action: 'start' } },
  ],
  mustSee: [
    {
      byS: 5,
      what: 'one power event: pump and source together',
      see: (seen) =>
        firstOuts(seen).join() === 'PUMP-1' &&
        /power of the unit lost/i.test(wordsOf(standing(seen, 'PUMP-1'))) &&
        /PUMP-1$/.test(standing(seen, 'VSRC-1')?.foldedUnder ?? ''),
    },
    {
      byS: 15,
      what: 'still one event, as the loop stays shut until its tank is full: the lost flow folds under it',
      see: (seen) => firstOuts(seen).join() === 'PUMP-1' && /PUMP-1$/.test(standing(seen, 'FLOW-2')?.foldedUnder ?? ''),
    },
    {
      byS: goneByS,
      what: 'the margin gone, no later than 3 s after the first reading below 0, while the unit says that it returns',
      see: (seen) => {
        const row = raisedRows(seen.journal).find(({ entry }) => entry === 'MARGIN-2');
        const since = standing(seen, 'MARGIN-2')?.since;
        if (row === undefined || since === undefined) return false;
        return (
          Date.parse(row.sourceTime) - Date.parse(since) <= 3000 && valueOf(seen, 'N3', 'mode') === modes.powerReturn
        );
      },
    },
    {
      byS: goneByS,
      what: 'that the vent is not opening',
      see: (seen) => /vent is not opening/i.test(wordsOf(standing(seen, 'MARGIN-2'))),
    },
    {
      byS: goneByS,
      what: 'stop the refill, lower the set point, and keep the vacuum',
      see: (seen) =>
        /interrupt the refill.*lower its set pressure/i.test(wordsOf(standing(seen, 'VENT-1'))) &&
        /keep the vacuum source running and lower the supply tank set pressure/i.test(
          wordsOf(standing(seen, 'MARGIN-2')),
        ),
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    callsFor('VSRC-1', 'a second call for the same loss of power'),
    callsFor('FLOW-2', 'a second call for the same loss of power'),
    callsFor('AIR-1', 'air coming in, as it is the tank’s own gas that moves'),
    {
      what: 'a margin below 0 for longer than 3 s of readings that is not told',
      see: (seen) => seen.atS > goneByS && !raisedRows(seen.journal).some(({ entry }) => entry === 'MARGIN-2'),
    },
  ],
});
