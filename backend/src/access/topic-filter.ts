/** Longest text that MQTT can carry, bytes of UTF-8 (MQTT 3.1.1, section 1.5.3). */
const LONGEST_BYTES = 65_535;

/** Topics that begin with $ are the broker's own; a wildcard at the start does not reach them (MQTT 3.1.1, section 4.7.2). */
const isOwn = (first: string): boolean => first.startsWith('$');

/** Whether a text is a topic filter: `#` only as the whole last level, `+` only as a whole one (section 4.7.1). */
export function isTopicFilter(text: string): boolean {
  if (text === '' || text.includes('\0') || utf8Length(text) > LONGEST_BYTES) return false;
  const levels = text.split('/');
  return levels.every((level, i) => !/[#+]/.test(level) || level === '+' || (level === '#' && i === levels.length - 1));
}

/** Whether a topic name is one of those that a filter means (section 4.7.1 and 4.7.2). Both are well formed. */
export const matchesTopic = (filter: string, topic: string): boolean => covers(filter, topic);

/**
 * Whether every topic that `asked` means is one that `allowed` means; a topic name is a filter that means itself
 * alone. `a/#` covers `a` as well (section 4.7.1.2).
 */
export function covers(allowed: string, asked: string): boolean {
  const has = allowed.split('/');
  const wants = asked.split('/');
  const [first = ''] = wants;
  if ((has[0] === '#' || has[0] === '+') && isOwn(first)) return false;
  for (let i = 0; ; i++) {
    if (has[i] === '#') return true;
    if (i === has.length || i === wants.length) {
      // What ends here matches what ends here, or goes on with `#` alone, which takes its parent in.
      return i === has.length && i === wants.length;
    }
    if (wants[i] === '#') return false;
    if (has[i] === '+') continue;
    if (has[i] !== wants[i]) return false;
  }
}

/** Bytes of a text in UTF-8; a half of a surrogate pair counts as what stands for it. */
function utf8Length(text: string): number {
  let bytes = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}
