import type { Alarm } from '@ebbline/shared/contract/alarm';
import { ref, watch } from 'vue';
import { needsAcknowledgement } from '../../components/alarm-facts';

export interface Chosen {
  readonly isChosen: (alarm: Alarm | undefined) => boolean;
  readonly choose: (ids: readonly string[], chosen: boolean) => void;
}

const toldAt = (alarm: Alarm): string => alarm.annunciatedAt ?? alarm.since;

/**
 * Which alarms are ticked. A tick is for the telling that it was set for: acknowledged or gone, or told anew while no frame
 * came, the alarm is ticked no longer.
 */
export function useChosen(standing: () => ReadonlyMap<string, Alarm>): Chosen {
  /** By id, when it had been told. */
  const chosen = ref<ReadonlyMap<string, string>>(new Map());
  const isChosen = (alarm: Alarm | undefined): boolean =>
    alarm !== undefined && chosen.value.get(alarm.id) === toldAt(alarm);
  watch(standing, (alarms) => {
    const kept = [...chosen.value].filter(([id]) => {
      const alarm = alarms.get(id);
      return alarm !== undefined && needsAcknowledgement(alarm.state) && isChosen(alarm);
    });
    if (kept.length < chosen.value.size) chosen.value = new Map(kept);
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
