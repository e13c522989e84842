import { expect, test } from 'vitest';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import type { SimulatedMessage } from '../../simulator/src/payload/messages';
import { dataFolder } from '../end-to-end/data-folder';
import { startReplayedBackend, type ReplayedBackend } from '../helpers/replayed-backend';
import { until } from '../helpers/until';
import { everySoMany, withPeriod } from './every-so-many-seconds';
import { look, toldShortly } from './look';
import { siteOfUnits } from './site-of-units';
import type { Seen, Story } from './story';
import { watchLoops } from './watch-loops';

/** Where the story is looked at at least, s after the onset: what must not be seen may come and go between the sights. */
const looksEach = 12;

/**
 * Runs a story as a test: the simulated plants speak through a real broker to the real program on the source clock, and
 * what is seen is asked of its API and its live feed. At each look the source time stands still.
 */
export function tellStory(story: Story): void {
  test(
    story.title,
    async () => {
      const everyS = story.everyS ?? 1;
      const site = everyS > 1 ? withPeriod(siteOfUnits(story.units), everyS) : siteOfUnits(story.units);
      const backend = await startReplayedBackend(story.site?.(site) ?? site, await dataFolder());
      const watch = watchLoops(backend.ebbline.url, story.units);
      try {
        await follow(story, backend, (atS) => look(backend, watch, story.units, atS));
      } finally {
        watch.stop();
        await backend.stop();
      }
    },
    300_000,
  );
}

async function follow(story: Story, backend: ReplayedBackend, lookAt: (atS: number) => Promise<Seen>): Promise<void> {
  const startMs = Date.parse(story.startsAt);
  const onsetMs = startMs + 1000 * story.quietS;
  const telemetry = recordTelemetry({
    seed: 1,
    startMs,
    seconds: story.quietS + story.lastsS + 1,
    units: demoFleet.filter(({ id }) => story.units.includes(id)),
    schedule: story.happens.map(({ atS, ...what }) => ({ ...what, atS: story.quietS + atS })),
  });
  const upTo = reader(everySoMany(telemetry, story.everyS ?? 1, startMs));
  for (const atS of looks(story)) {
    await backend.play(upTo(onsetMs + 1000 * atS));
    for (const deed of story.deeds?.filter((one) => one.atS === atS) ?? []) {
      await deed.act(backend.ebbline, onsetMs + 1000 * atS);
    }
    let seen = await lookAt(atS);
    for (const { byS, what, see } of story.mustSee) {
      if (byS !== atS) continue;
      const recognised = async (): Promise<boolean> => see((seen = await lookAt(atS)));
      await until(recognised, { withinMs: 5000, everyMs: 50 }).catch((cause: unknown) => {
        throw new Error(`not seen ${byS} s after the onset: ${what}\n${toldShortly(seen)}`, { cause });
      });
    }
    const wrong = atS < 0 ? [] : story.mustNotSee.filter(({ see }) => see(seen));
    expect(
      wrong.map(({ what }) => what),
      `${atS} s after the onset:\n${toldShortly(seen)}`,
    ).toEqual([]);
    if (atS < 0) expect(seen.alarms, `before the onset:\n${toldShortly(seen)}`).toEqual([]);
  }
}

/** Just before the onset, at every sight and deed, and evenly until the end. */
function looks({ mustSee, deeds, lastsS }: Story): number[] {
  const even = Array.from({ length: looksEach }, (_, i) => Math.round(((i + 1) * lastsS) / looksEach));
  const times = [-1, ...even, ...mustSee.map(({ byS }) => byS), ...(deeds ?? []).map(({ atS }) => atS)];
  return [...new Set(times)].sort((a, b) => a - b);
}

/** Messages up to a source time, each call from where the one before ended. */
function reader(telemetry: Iterator<SimulatedMessage>): (untilMs: number) => SimulatedMessage[] {
  let next = telemetry.next();
  return (untilMs) => {
    const messages: SimulatedMessage[] = [];
    while (next.done !== true && next.value.sourceMs <= untilMs) {
      messages.push(next.value);
      next = telemetry.next();
    }
    return messages;
  };
}
