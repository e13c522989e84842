import type { Fault } from './read-variable';

/** First levels of the topics of alarms at our own broker, where nothing is said. */
const USUAL = 'ebbline';
const LONGEST = 200;

/**
 * Under which topic alarms are told; null where they are not. Where nothing is said: at the broker of our own, and not at one
 * that others share, where what is kept for whoever asks stays until someone removes it.
 */
export function readAlarmTopic(
  variable: string,
  text: string | undefined,
  ownBroker: boolean,
  faults: Fault[],
): string | null {
  if (text === undefined) return ownBroker ? USUAL : null;
  if (text === 'off') return null;
  // No wildcard, and not among the broker's own topics (MQTT 3.1.1, section 4.7).
  if (text.length <= LONGEST && /^[A-Za-z0-9._-]+(\/[A-Za-z0-9._-]+)*$/.test(text)) return text;
  faults.push({
    variable,
    message: `must be off, or the first levels of a topic such as plant/ebbline: letters, digits, . _ - and single /, at most ${LONGEST}`,
  });
  return null;
}
