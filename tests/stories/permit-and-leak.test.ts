import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Alert } from '@ebbline/shared/contract/alert';
import type { Ebbline } from '../helpers/ebbline';
import type { Seen } from './story';
import { tellStory } from './tell-story';
import { alerted, neverAdviseVenting, raisedRows, standing, valueOf, wordsOf } from './words';

const litrePerMin = 1 / 60_000;
const expectedLpm = 30;
const leakLpm = 45;
/** A sound loop of the demo site: gas load before the work, free L/min. */
const soundLpm = 4;
/** The leak is found and mended, then the new hose is on. */
const mendedAtS = 120;
const hoseOnAtS = 150;
/** Gas has to leave the pipes and the level to come back, then all signs have to stay so for two minutes. */
const closedByS = 420;

async function openPermit(ebbline: Ebbline, nowMs: number): Promise<void> {
  const reply = await ebbline.post('/api/permits', {
    unit: 'N3',
    branch: 'r5',
    until: new Date(nowMs + 3_600_000).toISOString(),
    expectedInLeak: expectedLpm * litrePerMin,
    operator: 'Operator One',
    comment: 'hose change',
  });
  if (!reply.ok) throw new Error(`the permit was refused: ${await reply.text()}`);
}

const beyondPermit = (seen: Seen, entry: string): number =>
  Number(/(\d+) free L\/min more than the permit/.exec(wordsOf(standing(seen, entry)))?.[1]);

const openPermits = (seen: Seen): number => (seen.loop('N3')?.permits ?? []).length;

tellStory({
  title: 'the permit in rack 5 and the leak in rack 2: what comes in beyond the permit is told, and the permit closes',
  units: ['N3'],
  startsAt: '2026-03-03T10:00:00Z',
  quietS: 240,
  lastsS: closedByS,
  deeds: [{ atS: -120, what: 'a permit for a hose change in rack 5, with 30 free L/min expected', act: openPermit }],
  happens: [
    { atS: -90, command: { operation: 'openHose', unit: 'N3', branch: 'r5', freeLPerMin: expectedLpm } },
    { atS: 0, command: { fault: 'cutServerHose', unit: 'N3', branch: 'r2', freeLPerMin: leakLpm, action: 'start' } },
    { atS: mendedAtS, command: { fault: 'cutServerHose', unit: 'N3', branch: 'r2', action: 'repair' } },
    { atS: hoseOnAtS, command: { operation: 'closeHose', unit: 'N3', branch: 'r5' } },
  ],
  mustSee: [
    {
      byS: 10,
      what: 'air in rack 2, for which there is no permit',
      see: (seen) => standing(seen, 'AIR-1')?.where === 'Rack 2',
    },
    {
      byS: 10,
      // Nine tenths of the gas have been swept to the exhaust by then.
      what: '45 free L/min more than the permit',
      see: (seen) => ['AIR-1', 'PERMIT-1'].every((entry) => Math.abs(beyondPermit(seen, entry) - leakLpm) <= 6),
    },
    {
      byS: 60,
      what: 'what comes in beyond the permit and that total, when all of it has reached the exhaust',
      see: (seen) =>
        Math.abs(beyondPermit(seen, 'PERMIT-1') - leakLpm) <= 5 &&
        Math.abs(valueOf(seen, 'N3', 'gasLoad') / litrePerMin - (soundLpm + expectedLpm + leakLpm)) <= 5,
    },
    { byS: hoseOnAtS, what: 'the permit open, as the hose is off', see: (seen) => openPermits(seen) === 1 },
    {
      byS: closedByS,
      what: 'the permit closed by itself, as flow, gas load and level are back',
      see: (seen) => openPermits(seen) === 0 && valueOf(seen, 'N3', 'gasLoad') < 8 * litrePerMin,
    },
    {
      byS: closedByS,
      what: 'no word of the leak or the permit any more',
      see: (seen) =>
        [standing, alerted].every((told) => ['AIR-1', 'PERMIT-1'].every((id) => !isActive(told(seen, id)))),
    },
  ],
  mustNotSee: [
    neverAdviseVenting,
    {
      what: 'the leak in rack 2 suppressed by the permit of rack 5',
      see: (seen) =>
        seen.atS >= 10 &&
        !['AIR-1', 'PERMIT-1'].every((id) => raisedRows(seen.journal).some((row) => row.entry === id)),
    },
    { what: 'the permit’s own rack blamed', see: (seen) => standing(seen, 'AIR-1')?.where === 'Rack 5' },
  ],
});

/** An alarm whose condition has gone may still wait for somebody to acknowledge it. */
const isActive = (told: Alarm | Alert | undefined): boolean =>
  told !== undefined && !('state' in told && told.state === 'returnedUnacknowledged');
