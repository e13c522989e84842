import type { Trail } from '@ebbline/shared/contract/hall-trails';
import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import type { ShallowRef } from 'vue';
import { onScopeDispose, shallowReadonly, shallowRef, watch } from 'vue';
import { readHallTrails } from '../api/hall-trails';
import type { KeptTrail } from './fold-trail';
import { foldTrail, keptOf, noTrail } from './fold-trail';
import { theLiveFeed } from './live-feed-key';

const minuteMs = 60_000;

/**
 * The last hour of each loop of a hall: read once, and gone on with from frame to frame. Read again after a lost connection, and
 * where a minute passed without a frame or the clock was set back; where it can't be read, it is tried again with the next minute.
 */
export function useHallTrails(
  hall: () => string | null,
  frame: () => HallFrame | null,
): Readonly<ShallowRef<ReadonlyMap<string, Trail>>> {
  const feed = theLiveFeed();
  const trails = shallowRef<ReadonlyMap<string, KeptTrail>>(new Map());
  let minuteNow: number | null = null;
  let asked = 0;
  let isRead = false;

  async function read(): Promise<void> {
    const of = hall();
    asked += 1;
    const mine = asked;
    isRead = false;
    if (of === null) return;
    const reply = await readHallTrails(of);
    if (mine !== asked || !reply.ok) return;
    isRead = true;
    trails.value = keptOf(reply.value);
    goOn(frame());
  }

  function goOn(next: HallFrame | null): void {
    if (next?.time === null || next === null) return;
    const minute = Math.floor(Date.parse(next.time) / minuteMs);
    const passed = minuteNow === null ? 0 : minute - minuteNow;
    // An answer may be built a moment after the frame, in the next minute: by one minute back nothing is lost, and it is waited for.
    if (passed !== -1) minuteNow = minute;
    let changed = trails.value.size !== next.loops.length;
    const folded = new Map<string, KeptTrail>();
    for (const { unit, pressureWindow } of next.loops) {
      const before = trails.value.get(unit) ?? noTrail(minute);
      const after = foldTrail(before, minute, pressureWindow.lowestPa, pressureWindow.highestPa);
      if (after !== before) changed = true;
      folded.set(unit, after);
    }
    if (changed) trails.value = folded;
    if (passed > 1 || passed < -1 || (passed === 1 && !isRead)) void read();
  }

  watch(
    hall,
    () => {
      trails.value = new Map();
      minuteNow = null;
      void read();
    },
    { immediate: true },
  );
  watch(frame, goOn, { immediate: true });
  watch(feed.link, (now, before) => {
    if (now === 'open' && before === 'closed') void read();
  });
  onScopeDispose(() => {
    asked += 1;
  });
  return shallowReadonly(trails);
}
