import { tellStory } from './tell-story';
import { callsFor, calledFor, neverAdviseVenting, standing, valueOf, wordsOf } from './words';

/** Kelvin a watt of the parameter set: fans at full speed, 300 W at 27 °C make 77 °C. */
const fanKPerW = 0.167;
const hallC = 27;
const plates = [1, 2, 3, 4, 5, 6, 7, 8].flatMap((rack) => [`r${rack}a`, `r${rack}b`]);
const isolatedAtS = 90;

tellStory({
  title: 'the wrong rack: a hose is pulled in rack 5 at night, and the first thing said is where air comes in',
  units: ['N1'],
  startsAt: '2026-03-03T02:38:00Z',
  quietS: 120,
  lastsS: 180,
  happens: [
    { atS: 0, command: { fault: 'cutServerHose', unit: 'N1', branch: 'r5', size: 'usual', action: 'start' } },
    { atS: isolatedAtS, command: { operation: 'isolateBranch', unit: 'N1', branch: 'r5', action: 'start' } },
  ],
  mustSee: [
    {
      byS: 5,
      what: 'an open line, rack 5 probable',
      see: (seen) =>
        standing(seen, 'AIR-1')?.where === 'Rack 5' && /Rack 5 probable/.test(wordsOf(standing(seen, 'AIR-1'))),
    },
    {
      byS: 5,
      // 308 free L/min of the source at its pressure, 3 of before, 164 choked through an outlet of 5.1 mm: 0.86 hoses left.
      what: 'one source carries this opening and 0 more',
      see: (seen) => /Carries this one and 0 more on one source/.test(wordsOf(standing(seen, 'AIR-1'))),
    },
    {
      byS: 5,
      what: 'isolate the rack, keep the vacuum on, do not drain: the level falls back',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'AIR-1'));
        return [/isolate/i, /keep the vacuum/i, /do not drain/i, /level/i].every((one) => one.test(words));
      },
    },
    {
      byS: 30,
      // Rack 5's hoses and manifolds and what lies behind them: about 50 L.
      what: 'that the level falls by some 50 L when the rack is isolated, beforehand',
      see: (seen) => {
        const litres = /level is up by (\d+) L and falls by as much/.exec(wordsOf(standing(seen, 'AIR-1')))?.[1];
        return Math.abs(Number(litres) - 50) < 15;
      },
    },
    {
      byS: 30,
      what: 'how hot the chips without water become on their fans: hall air and 0.167 K/W, 77 °C at the 300 W of full work',
      see: (seen) => {
        const expected = valueOf(seen, 'N1', 'temperatureOnFans');
        const told = /expected at (\d+) °C on fans/.exec(wordsOf(standing(seen, 'AIR-1')))?.[1];
        const byHand =
          hallC + fanKPerW * Math.max(...plates.map((plate) => valueOf(seen, 'N1', `plate.${plate}.power`)));
        return Math.abs(expected - byHand) < 3 && Math.abs(Number(told) - byHand) < 3;
      },
    },
    {
      byS: 180,
      what: 'the level back where it was before the opening, as announced',
      see: (seen) => Math.abs(valueOf(seen, 'N1', 'separator.level') - 0.41) < 0.02,
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    { what: 'a branch flow as first-out', see: (seen) => calledFor(seen)[0] === 'FLOW-3' },
    callsFor('TANK-3', 'a call because of a low level'),
    callsFor('MARGIN-1', 'a margin alarm, as no margin moves'),
    callsFor('MARGIN-2', 'a margin alarm, as no margin moves'),
    callsFor('WATER-1', 'water, as air comes in'),
  ],
});
