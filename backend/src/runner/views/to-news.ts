import type { AlarmTexts } from '../../evaluation/pipeline/alarm-texts';
import type { AlarmNews } from '../../ports/notice';
import type { ShownAlarm } from './scene';
import { toAlarm } from './to-alarm';
import { toSetAside } from './to-set-aside';

/** An alarm as others are told of it. */
export function toNews(shown: ShownAlarm, texts: AlarmTexts, change: AlarmNews['change']): AlarmNews {
  const aside = toSetAside(shown.record, texts.title);
  if (aside === null) return { alarm: toAlarm(shown, texts), setAside: null, change };
  const { mode, since, until, by, reason } = aside;
  return { alarm: toAlarm(shown, texts), setAside: { mode, since, until, by, reason }, change };
}
