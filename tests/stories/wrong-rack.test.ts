import { tellStory } from './tell-story';
import { callsFor, calledFor, neverAdviseVenting, standing, valueOf, wordsOf } from './words';

tellStory({
  title: 'the wrong rack: a hose is pulled in rack 5 at night, and the first thing said is where air comes in',
  units: ['N1'],
  startsAt: '2026-03-03T02:38:00Z',
  quietS: 120,
  lastsS: 180,
  happens: [{ atS: 0, command: { fault: 'cutServerHose', unit: 'N1', branch: 'r5', size: 'usual', action: 'start' } }],
  mustSee: [
    {
      byS: 5,
      what: 'an open line, rack 5 probable',
      see: (seen) => standing(seen, 'AIR-1')?.where === 'Rack 5',
    },
    {
      byS: 5,
      what: 'isolate the rack, keep the vacuum on, do not drain: the level falls back',
      see: (seen) => {
        const words = wordsOf(standing(seen, 'AIR-1'));
        return [/isolate/i, /keep the vacuum|vacuum source on|vacuum on/i, /do not drain/i, /level/i].every((one) =>
          one.test(words),
        );
      },
    },
    {
      byS: 30,
      what: 'by how much the level is up, and that it falls by as much when the rack is isolated',
      see: (seen) => /level is up by \d+ L and falls by as much/.test(wordsOf(standing(seen, 'AIR-1'))),
    },
    {
      byS: 30,
      // 27 °C of the hall and 0.167 K/W of fans at full speed: 77 °C at 300 W, 60 °C at the 200 W of a quiet night.
      what: 'how hot the chips without water become on their fans',
      see: (seen) => {
        const expected = valueOf(seen, 'N1', 'temperatureOnFans');
        return expected > 57 && expected < 80 && /on fans/.test(wordsOf(standing(seen, 'AIR-1')));
      },
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
