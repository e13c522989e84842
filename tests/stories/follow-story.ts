import { expect } from 'vitest';
import type { SimulatedMessage } from '../../simulator/src/payload/messages';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import type { Ebbline } from '../helpers/ebbline';
import type { Player } from '../helpers/player';
import { until } from '../helpers/until';
import { everySoMany } from './every-so-many-seconds';
import { lapseTelemetry } from './lapse-telemetry';
import { toldShortly } from './look';
import type { Seen, Story } from './story';

/** How the story reaches the program. */
export interface Stage {
  readonly play: Player['play'];
  readonly ebbline: Ebbline;
  /** Everything that is seen now, so many seconds after the onset. */
  look(atS: number): Promise<Seen>;
  /** What was seen by then may be on its way to whoever asks: so long it is asked for again, ms. Source time stands still. */
  readonly patienceMs: number;
}

/** Where the story is looked at at least, s after the onset: what must not be seen may come and go between the sights. */
const looksEach = 12;

/** Plays a story up to each look, and throws where something is not seen in time or something is seen that must not be. */
export async function followStory(story: Story, stage: Stage): Promise<void> {
  const startMs = Date.parse(story.startsAt);
  const onsetMs = startMs + 1000 * story.quietS;
  const seconds = story.quietS + story.lastsS + 1;
  const recording = {
    seed: 1,
    startMs,
    units: demoFleet.filter(({ id }) => story.units.includes(id)),
    schedule: story.happens.map(({ atS, ...what }) => ({ ...what, atS: story.quietS + atS })),
  };
  const telemetry =
    story.lapse === undefined
      ? recordTelemetry({ ...recording, seconds })
      : lapseTelemetry(recording, { ...story.lapse, untilS: story.quietS + story.lapse.untilS }, seconds);
  const upTo = reader(story.lapse === undefined ? everySoMany(telemetry, story.everyS ?? 1, startMs) : telemetry);
  for (const atS of looks(story)) {
    await stage.play(upTo(onsetMs + 1000 * atS));
    for (const deed of story.deeds?.filter((one) => one.atS === atS) ?? []) {
      await deed.act(stage.ebbline, onsetMs + 1000 * atS);
    }
    let seen = await stage.look(atS);
    for (const { byS, what, see } of story.mustSee) {
      if (byS !== atS) continue;
      const recognised = async (): Promise<boolean> => see((seen = await stage.look(atS)));
      await until(recognised, { withinMs: stage.patienceMs, everyMs: 50 }).catch((cause: unknown) => {
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
