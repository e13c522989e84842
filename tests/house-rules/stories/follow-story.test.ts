import { expect, test } from 'vitest';
import type { Ebbline } from '../../helpers/ebbline';
import type { PlayedMessage } from '../../helpers/player';
import { everySoMany, withPeriod } from '../../stories/every-so-many-seconds';
import { followStory, type Stage } from '../../stories/follow-story';
import { siteOfUnits } from '../../stories/site-of-units';
import type { Seen, Story } from '../../stories/story';

const startMs = Date.parse('2026-03-03T12:00:00Z');
const quiet: Story = {
  title: 'nothing happens on the bench',
  units: ['N7'],
  startsAt: '2026-03-03T12:00:00Z',
  quietS: 2,
  lastsS: 4,
  happens: [],
  mustSee: [],
  mustNotSee: [],
};

/** A stage that keeps what was played, and on which there is nothing to be seen. */
function emptyStage(): Stage & { readonly played: PlayedMessage[]; readonly looks: [atS: number, lastMs: number][] } {
  const played: PlayedMessage[] = [];
  const looks: [number, number][] = [];
  return {
    played,
    looks,
    patienceMs: 0,
    ebbline: {} as Ebbline,
    play: (messages) => {
      played.push(...messages);
      return Promise.resolve();
    },
    look: (atS): Promise<Seen> => {
      looks.push([atS, Math.max(...played.map(({ sourceMs }) => sourceMs))]);
      const nothing = { alarms: [], alerts: [], journal: [], reading: () => undefined, loop: () => undefined };
      return Promise.resolve({ atS, ...nothing });
    },
  };
}

test('a story is looked at when all of its telemetry up to that moment has been played, and none after it', async () => {
  const stage = emptyStage();
  await followStory({ ...quiet, mustSee: [{ byS: 3, what: 'anything', see: () => true }] }, stage);
  expect(stage.looks.map(([atS]) => atS)).toEqual(expect.arrayContaining([-1, 3, 4]));
  for (const [atS, lastMs] of stage.looks) expect(lastMs).toBe(startMs + 1000 * (2 + atS));
});

test('a story fails where something is not seen in time, and says what', async () => {
  const story: Story = { ...quiet, mustSee: [{ byS: 3, what: 'a rack on fire', see: () => false }] };
  await expect(followStory(story, emptyStage())).rejects.toThrow('not seen 3 s after the onset: a rack on fire');
});

test('a story fails where something is seen that must not be, but not before its onset', async () => {
  const seen: number[] = [];
  const taboo = { what: 'advice to vent', see: ({ atS }: Seen) => seen.push(atS) > 0 && atS >= 2 };
  await expect(followStory({ ...quiet, mustNotSee: [taboo] }, emptyStage())).rejects.toThrow('advice to vent');
  expect(seen.filter((atS) => atS < 0)).toEqual([]);
});

test('what a person does is done at its moment of source time', async () => {
  const done: string[] = [];
  const deed = {
    atS: 1,
    what: 'a permit',
    act: (_: Ebbline, nowMs: number) => Promise.resolve(done.push(new Date(nowMs).toISOString())),
  };
  await followStory({ ...quiet, deeds: [deed] }, emptyStage());
  expect(done).toEqual(['2026-03-03T12:00:03.000Z']);
});

test('a story of few units has a site of those units alone', () => {
  const site = siteOfUnits(['N1', 'S1']) as Record<'units' | 'halls' | 'gateways' | 'loops', object>;
  expect([site.units, site.halls, site.gateways].map((part) => Object.keys(part))).toEqual([
    ['N1', 'S1'],
    ['north', 'south'],
    ['north-a', 'south-a'],
  ]);
  expect(site.loops).toEqual({});
  expect(Object.keys(siteOfUnits(['N8', 'N9'])['loops'] as object)).toHaveLength(1);
});

test('seldom telemetry is every so manieth second of a gateway, with a site that says so', () => {
  const message = (second: number, gateway: string | null, retain = false) => ({
    topic: 't',
    payload: '{}',
    sourceMs: startMs + 1000 * second,
    retain,
    gateway,
  });
  const all = [0, 5, 10, 15]
    .flatMap((second) => [message(second, 'g'), message(second, null)])
    .concat(message(17, 'g', true));
  const kept = [...everySoMany(all, 10, startMs)].map(({ sourceMs, gateway }) => [
    (sourceMs - startMs) / 1000,
    gateway,
  ]);
  expect(kept).toEqual([
    [0, 'g'],
    [0, null],
    [5, null],
    [10, 'g'],
    [10, null],
    [15, null],
    [17, 'g'],
  ]);
  const slower = withPeriod(
    { templates: { m: { points: { a: { unit: '°C' }, b: { period: '20 s' } } } }, units: {} },
    10,
  );
  expect(slower['templates']).toEqual({ m: { points: { a: { unit: '°C', period: '10 s' }, b: { period: '20 s' } } } });
});
