import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';
import { acknowledge } from '../api/alarms';
import { problemText } from '../text/problem-text';

/** What one alarm's acknowledgement is doing. Nothing is shown as done before the server has said so. */
export type Acknowledging =
  | { readonly step: 'idle' }
  | { readonly step: 'busy' }
  /** shown: a frame has shown it, or what came after it. */
  | { readonly step: 'confirmed'; readonly alarm: Alarm; readonly shown?: true }
  | { readonly step: 'refused'; readonly text: string };

export interface AcknowledgeOptions {
  /** Default: the server. */
  readonly send?: (alarm: string, wish: { operator: string; comment: string }) => Promise<Result<Alarm>>;
  /** All that stand by the newest frame. Default: no frame is looked at. */
  readonly standing?: () => readonly Alarm[];
}

export function useAcknowledge(options: AcknowledgeOptions = {}): {
  readonly state: Readonly<ShallowRef<ReadonlyMap<string, Acknowledging>>>;
  readonly acknowledge: (alarm: string, operator: string, comment: string) => Promise<void>;
} {
  const send = options.send ?? acknowledge;
  const state = shallowRef<ReadonlyMap<string, Acknowledging>>(new Map());
  const put = (alarm: string, next: Acknowledging): void => {
    state.value = new Map(state.value).set(alarm, next);
  };
  /** Of what was confirmed, what stood no longer since: what stands again is told anew. */
  const left = new Set<string>();
  watch(options.standing ?? (() => null), (alarms) => {
    if (alarms === null) return;
    for (const [id, one] of state.value) {
      if (one.step !== 'confirmed' || one.shown === true) continue;
      const now = alarms.find((alarm) => alarm.id === id);
      if (now === undefined) left.add(id);
      else if (left.has(id) || isNoOlder(now, one.alarm)) put(id, { ...one, shown: true });
    }
  });
  return {
    state: shallowReadonly(state),
    async acknowledge(alarm, operator, comment) {
      if (state.value.get(alarm)?.step === 'busy') return;
      put(alarm, { step: 'busy' });
      left.delete(alarm);
      const reply = await send(alarm, { operator, comment });
      put(alarm, reply.ok ? { step: 'confirmed', alarm: reply.value } : refusedWith(reply.fault));
    },
  };
}

/** Whether it stands as the answer says, or in a state that came after. */
function isNoOlder(now: Alarm, answer: Alarm): boolean {
  const laterMs = Date.parse(now.stateSince) - Date.parse(answer.stateSince);
  return laterMs > 0 || (laterMs === 0 && now.state === answer.state);
}

function refusedWith(fault: { code: string; message: string }): Acknowledging {
  return { step: 'refused', text: problemText(fault.code, fault.message) };
}
