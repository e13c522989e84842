import type { Alarm } from '@ebbline/shared/contract/alarm';
import { ref, watch } from 'vue';
import { needsAcknowledgement } from '../../components/alarm-facts';
import { awakeNowMs } from '../../state/use-ticks';

export interface Chosen {
  readonly isChosen: (alarm: Alarm | undefined) => boolean;
  readonly choose: (ids: readonly string[], chosen: boolean) => void;
}

const toldAt = (alarm: Alarm): string => alarm.annunciatedAt ?? alarm.since;

/** Without a frame for so long an alarm may have been acknowledged, gone and told anew unseen. ms */
const unseenMs = 5000;

/**
 * Which alarms are ticked. An alarm that is acknowledged or gone is ticked no longer, and one that was told anew while no frame
 * came; one that comes back while it waits still, as one that chatters does, stays ticked.
 */
export function useChosen(standing: () => ReadonlyMap<string, Alarm>, nowMs: () => number = awakeNowMs): Chosen {
  /** By id, when it had been told. */
  const chosen = ref<ReadonlyMap<string, string>>(new Map());
  const isChosen = (alarm: Alarm | undefined): boolean =>
    alarm !== undefined && chosen.value.get(alarm.id) === toldAt(alarm);
  let seenMs = nowMs();
  watch(standing, (alarms) => {
    const isSeen = nowMs() - seenMs < unseenMs;
    seenMs = nowMs();
    const kept = [...chosen.value.keys()].flatMap((id): [string, string][] => {
      const alarm = alarms.get(id);
      if (alarm === undefined || !needsAcknowledgement(alarm.state)) return [];
      return isSeen || isChosen(alarm) ? [[id, toldAt(alarm)]] : [];
    });
    if (kept.length < chosen.value.size || kept.some(([id, at]) => chosen.value.get(id) !== at))
      chosen.value = new Map(kept);
  });
  return {
    isChosen,
    choose(ids, wanted) {
      const next = new Map(chosen.value);
      for (const id of ids) {
        const alarm = standing().get(id);
        if (wanted && alarm !== undefined) next.set(id, toldAt(alarm));
        else next.delete(id);
      }
      chosen.value = next;
    },
  };
}
