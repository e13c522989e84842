import { test } from 'vitest';
import { dataFolder } from '../end-to-end/data-folder';
import { startReplayedBackend } from '../helpers/replayed-backend';
import { withPeriod, withPeriodOfHalls } from './every-so-many-seconds';
import { followStory } from './follow-story';
import { look } from './look';
import { siteOfUnits } from './site-of-units';
import type { Story } from './story';
import { watchLoops } from './watch-loops';

/**
 * Runs a story as a test: the simulated plants speak through a real broker to the real program on the source clock, and
 * what is seen is asked of its API and its live feed. At each look the source time stands still.
 */
export function tellStory(story: Story): void {
  const play = async (): Promise<void> => {
    const everyS = story.lapse?.everyS ?? story.everyS ?? 1;
    const told = everyS > 1 ? withPeriod(siteOfUnits(story.units), everyS) : siteOfUnits(story.units);
    const site = story.lapse === undefined ? told : withPeriodOfHalls(told, everyS);
    const backend = await startReplayedBackend(story.site?.(site) ?? site, await dataFolder());
    const watch = watchLoops(backend.ebbline.url, story.units);
    try {
      await followStory(story, {
        play: (messages) => backend.play(messages),
        ebbline: backend.ebbline,
        look: (atS) => look(backend, watch, story.units, atS),
        patienceMs: 5000,
      });
    } finally {
      watch.stop();
      await backend.stop();
    }
  };
  test(story.title, play, 900_000);
}
