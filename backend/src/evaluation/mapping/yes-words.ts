/** Words by which senders say yes and no (common practice, no source); compared in lower case. */
const yes = new Set(['true', 'yes', 'on', 'run', 'running', 'wet', 'open', 'alarm', 'active', '1', 'high', 'started']);
const no = new Set(['false', 'no', 'off', 'stop', 'stopped', 'dry', 'closed', 'ok', 'normal', 'inactive', '0', 'low']);
/** What a site file needs no `words` for. */
const plain = new Set(['true', 'false', '1', '0']);

/** Each word with what it would mean; null where one of them is neither. */
export function yesNoOf(words: readonly string[]): Readonly<Record<string, 'yes' | 'no'>> | null {
  const meanings: Record<string, 'yes' | 'no'> = {};
  for (const word of words) {
    const lower = word.toLowerCase();
    if (!yes.has(lower) && !no.has(lower)) return null;
    meanings[word] = yes.has(lower) ? 'yes' : 'no';
  }
  return meanings;
}

/** Whether a site file has to say what these mean. */
export const needsWords = (words: readonly string[]): boolean => words.some((word) => !plain.has(word));
