/** Words by which senders say yes and no (common practice, no source); compared in lower case. */
type Words = readonly [yes: readonly string[], no: readonly string[]];

/** These mean the same of every point. */
const ofAll: Words = [
  ['true', 'yes', 'on', '1'],
  ['false', 'no', 'off', '0'],
];
const active: Words = [['active'], ['inactive']];
const found: Words = [
  ['wet', 'alarm', 'active'],
  ['dry', 'ok', 'normal', 'inactive'],
];
const full: Words = [
  ['high', 'alarm', 'active'],
  ['low', 'ok', 'normal', 'inactive'],
];
const runs: Words = [
  ['run', 'running', 'started', 'active'],
  ['stop', 'stopped', 'inactive'],
];
/** By the last word of the point: an alarm says that water was found, and that a pump is not available. */
const ofEnding: Readonly<Record<string, Words>> = {
  found,
  full,
  levelHigh: full,
  running: runs,
  command: runs,
  filling: active,
  manual: active,
  available: [['ok', 'normal'], ['alarm']],
  // Of the valve that isolates.
  isolated: [['closed', 'shut'], ['open']],
};
const known = new Set([ofAll, ...Object.values(ofEnding)].flat(2));
/** What a site file needs no `words` for. */
const plain = new Set(['true', 'false', '1', '0']);

/** Whether each could be a yes or a no of some point. */
export const sayYesOrNo = (words: readonly string[]): boolean => words.every((word) => known.has(word.toLowerCase()));

/** Each word with what it means of this point; null where one of them could mean either. */
export function meaningsOf(point: string, words: readonly string[]): Readonly<Record<string, 'yes' | 'no'>> | null {
  const [yes, no] = ofEnding[point.split('.').at(-1) ?? ''] ?? [[], []];
  const meanings: Record<string, 'yes' | 'no'> = {};
  for (const word of words) {
    const lower = word.toLowerCase();
    if (ofAll[0].includes(lower) || yes.includes(lower)) meanings[word] = 'yes';
    else if (ofAll[1].includes(lower) || no.includes(lower)) meanings[word] = 'no';
    else return null;
  }
  return meanings;
}

/** Whether a site file has to say what these mean. */
export const needsWords = (words: readonly string[]): boolean => words.some((word) => !plain.has(word));
