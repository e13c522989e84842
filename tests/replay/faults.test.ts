import { describe, expect, test } from 'vitest';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import type { SettledPlants } from '../../simulator/src/scenario/unit-plant';
import { faultCases } from './fault-cases';
import { plantFaultCases } from './plant-fault-cases';
import { pumpTripCases } from './pump-trip-cases';
import { sensorFaultCases } from './sensor-fault-cases';
import { judgeRecording } from './judge-recording';
import { toldApartOf } from './told-apart';

const startMs = Date.UTC(2026, 2, 3, 9);
const beginsS = 60;
/** Cases in which the operator is told one alarm, and what else is told is listed. */
const onePerFault = new Set([...plantFaultCases, ...pumpTripCases, ...sensorFaultCases].map(({ command }) => command));

/** Each unit settles once, not once a case. */
const settled: SettledPlants = new Map();

describe('a fault raises what it must and nothing else', () => {
  test.for([...faultCases, ...plantFaultCases, ...pumpTripCases, ...sensorFaultCases])(
    '$command',
    ({ unit, command, lastsS, must, may, because }) => {
      const units = demoFleet.filter(({ id }) => id === unit);
      const { transitions, refused } = judgeRecording({
        seed: 1,
        startMs,
        seconds: beginsS + lastsS,
        units,
        settled,
        schedule: [{ atS: beginsS, command: { ...command, action: 'start' } }],
      });
      expect(refused).toEqual({});
      // The other units of the site send nothing here; theirs is not the story.
      const own = [unit, ...units.map(({ gateway }) => gateway)];
      const mine = transitions.filter(
        ({ alarm, from }) => from === 'normal' && own.some((id) => alarm.startsWith(`${id}:`)),
      );
      const seen = mine.map(({ entry, where, atMs, foldedUnder }) => ({
        entry,
        where,
        afterS: (atMs - startMs) / 1000 - beginsS,
        folded: foldedUnder !== null,
      }));

      // What folds under its first-out is told as its consequence: the operator has one alarm for it.
      const unexpected = seen.filter(
        ({ entry, folded }) => !folded && ![...must.map((row) => row.entry), ...may].includes(entry),
      );
      expect(unexpected, because).toEqual([]);
      must.forEach(({ entry, withinS, where }, i) => {
        expect(seen[i], because).toMatchObject({ entry, ...(where === undefined ? {} : { where }) });
        expect(seen[i]?.afterS).toBeGreaterThan(0);
        expect(seen[i]?.afterS).toBeLessThanOrEqual(withinS);
      });
      expect(new Set(seen.map(({ entry }) => entry)).size).toBe(seen.length);

      if (!onePerFault.has(command)) return;
      const told = seen.filter(({ folded }) => !folded).map(({ entry }) => entry);
      expect(told.slice(0, 1), 'one alarm that matters, first').toEqual(must.slice(0, 1).map(({ entry }) => entry));
      expect(told.slice(1).sort(), 'and what is told beside it').toEqual(toldApartOf(unit, command));
    },
  );
});
