import type { Frame } from '@ebbline/shared/contract/live-feed';
import { useAlarmNotification, type AlarmNotification } from './use-alarm-notification';
import { useAlarmSound, type AlarmSound } from './use-alarm-sound';
import { useTitleCount } from './use-title-count';

/** Everything by which alarms call beside the screen: sound, the machine's own notifications, the title of the tab. */
export function useAlarmCalls(frame: () => Frame | null): {
  readonly sound: AlarmSound;
  readonly notification: AlarmNotification;
} {
  const calling = (): NonNullable<Frame['calling']>['newest'] => frame()?.calling?.newest ?? none;
  useTitleCount(() => frame()?.calling?.total ?? 0);
  return { sound: useAlarmSound(calling), notification: useAlarmNotification(calling) };
}

const none = [] as const;
