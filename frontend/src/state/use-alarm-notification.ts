import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import { readonly, ref, watch, type Ref } from 'vue';
import { callOf } from './silenced-calls';

const key = 'ebbline.alarmNotification';
/** Less urgent ones wait until someone looks. */
const leastUrgentTold = 2;
/** More at once are told in one. */
const toldSingly = 3;

/** `absent`: this browser has none, or not for a page like this. */
export type NotificationChoice = 'absent' | 'off' | 'on' | 'refused';

export interface AlarmNotification {
  readonly choice: Readonly<Ref<NotificationChoice>>;
  /** Asks the browser where it has to be asked; to be called from a click. */
  choose(on: boolean): Promise<void>;
}

/** Tells of what calls urgently while nobody looks at the page, through the machine that the browser runs on. */
export function useAlarmNotification(calling: () => readonly CallingAlarm[]): AlarmNotification {
  const choice = ref<NotificationChoice>(keptChoice());
  let seen = new Set<string>();
  watch(
    calling,
    (now) => {
      const fresh = now.filter((one) => one.priority <= leastUrgentTold && !seen.has(callOf(one)));
      seen = new Set(now.map(callOf));
      if (choice.value === 'on' && document.hidden && fresh.length > 0) tell(fresh);
    },
    { immediate: true },
  );
  return {
    choice: readonly(choice),
    async choose(on) {
      if (choice.value === 'absent') return;
      const permission = on ? await Notification.requestPermission() : Notification.permission;
      localStorage.setItem(key, on && permission === 'granted' ? 'on' : 'off');
      choice.value = keptChoice();
    },
  };
}

function tell(fresh: readonly CallingAlarm[]): void {
  for (const { id, priority, title, unit, where } of fresh.slice(0, toldSingly))
    show(`Priority ${priority}: ${title}`, [unit, where].filter((part) => part !== null).join(', '), id);
  const more = fresh.length - toldSingly;
  if (more > 0) show(`${more} more alarms`, 'See the Alarms screen.', 'more');
}

function show(title: string, body: string, tag: string): void {
  try {
    const notification = new Notification(title, { body, tag: `ebbline ${tag}` });
    notification.onclick = () => {
      window.focus();
      notification.close();
    };
  } catch {
    // Some phones have the constructor and refuse it; the sound and the page tell it too.
  }
}

function keptChoice(): NotificationChoice {
  if (typeof Notification === 'undefined') return 'absent';
  if (Notification.permission === 'denied') return 'refused';
  return localStorage.getItem(key) === 'on' && Notification.permission === 'granted' ? 'on' : 'off';
}
