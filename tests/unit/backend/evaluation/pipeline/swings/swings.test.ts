import { describe, expect, it } from 'vitest';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { groupSwings, systemSwings } from './group-and-program-swings';
import type { Judge, Swing } from './swing';
import { swingTable } from './swing-table';
import { unitSwings } from './unit-swings';

const driven = { ...unitSwings, ...groupSwings, ...systemSwings };
const rows = Object.entries(driven).flatMap(([id, swings]) => swings.map((swing) => [id, swing.what, swing] as const));

/** How often an alarm without delays is raised, and cleared, while its value swings between two places. */
function swing(judge: Judge, there: number, back: number, times = 3): { raised: number; cleared: number } {
  let active = false;
  const seen = { raised: 0, cleared: 0 };
  for (let i = 0; i < times; i += 1)
    for (const value of [there, back]) {
      const is: boolean = judge(value, active) === Verdict.yes;
      if (is && !active) seen.raised += 1;
      if (!is && active) seen.cleared += 1;
      active = is;
    }
  return seen;
}

describe('the table of swings', () => {
  it('has a value to move for each entry that is driven, and for no other', () => {
    const named = Object.entries(swingTable).flatMap(([id, how]) => (how.startsWith('driven') ? [id] : []));
    expect(Object.keys(driven).sort()).toEqual(named.sort());
  });
});

describe('a value that swings about its limit', () => {
  it.each(rows)(
    'raises %s (%s) once while it comes back less than the deadband, and each time where it comes back further',
    (_id, _what, { raises, clears, judge }: Swing) => {
      const width = clears - raises;
      const at = (share: number): number => raises + share * width;
      expect(swing(judge(), at(-0.3), at(0.995))).toEqual({ raised: 1, cleared: 0 });
      expect(swing(judge(), at(-0.3), at(1.005))).toEqual({ raised: 3, cleared: 3 });
      expect(swing(judge(), at(-0.005), at(0.995))).toEqual({ raised: 1, cleared: 0 });
      expect(swing(judge(), at(0.005), at(1.3))).toEqual({ raised: 0, cleared: 0 });
    },
  );
});
