import { expect, test } from 'vitest';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { judgeRecording } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const beginsS = 60;
const repairedS = 120;

/**
 * When the opening is closed, water fills the pipes again and the separator's level falls by what the gas had pushed
 * up: that is the way back, and nobody has to be called for it. Common practice, no source.
 */
test.for(['N3', 'S1', 'N7'])('%s goes back to rest after its hose is mended, and raises nothing new', (id) => {
  const cut = { fault: 'cutServerHose', unit: id, branch: 'r1' };
  const { transitions } = judgeRecording({
    seed: 1,
    startMs,
    seconds: 360,
    units: demoFleet.filter((unit) => unit.id === id),
    schedule: [
      { atS: beginsS, command: { ...cut, action: 'start' } },
      { atS: repairedS, command: { ...cut, action: 'repair' } },
    ],
  });
  const mine = transitions.filter(({ alarm }) => alarm.startsWith(`${id}:`));
  // What follows from the open hose folds under it, comes late by its own delay, and ends with it.
  const followers = new Set(mine.filter(({ foldedUnder }) => foldedUnder !== null).map(({ alarm }) => alarm));
  const after = mine.filter(({ alarm, atMs }) => atMs > startMs + 1000 * repairedS && !followers.has(alarm));
  expect(mine.some(({ entry, to }) => entry === 'AIR-1' && to === 'unacknowledged')).toBe(true);
  expect(after.map(({ entry, to }) => `${entry} ${to}`)).toEqual(['AIR-1 returnedUnacknowledged']);
});
