import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef } from 'vue';
import { acknowledge } from '../api/alarms';
import { problemText } from '../text/problem-text';

/** What one alarm's acknowledgement is doing. Nothing is shown as done before the server has said so. */
export type Acknowledging =
  | { readonly step: 'idle' }
  | { readonly step: 'busy' }
  | { readonly step: 'confirmed'; readonly alarm: Alarm }
  | { readonly step: 'refused'; readonly text: string };

export interface AcknowledgeOptions {
  /** Default: the server. */
  readonly send?: (alarm: string, wish: { operator: string; comment: string }) => Promise<Result<Alarm>>;
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
  return {
    state: shallowReadonly(state),
    async acknowledge(alarm, operator, comment) {
      if (state.value.get(alarm)?.step === 'busy') return;
      put(alarm, { step: 'busy' });
      const reply = await send(alarm, { operator, comment });
      put(alarm, reply.ok ? { step: 'confirmed', alarm: reply.value } : refusedWith(reply.fault));
    },
  };
}

function refusedWith(fault: { code: string; message: string }): Acknowledging {
  return { step: 'refused', text: problemText(fault.code, fault.message) };
}
