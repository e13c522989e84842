/** Why this may not be the topic of a message (MQTT 3.1.1 section 4.7), or null where it may. */
export function topicFault(topic: string): string | null {
  if (topic === '') return 'the topic is empty; give one';
  if (/[+#]/.test(topic))
    return 'a topic may not have the wildcards + and #; name one topic (filters go to intake.subscriptions)';
  if (topic.includes('\u0000')) return 'a topic may not have a NUL character; take it out';
  if (topic.startsWith('$')) return "topics that begin with $ are the broker's own; take another";
  return null;
}

/** Why this is no topic filter (MQTT 3.1.1 section 4.7.1), or null. */
export function filterFault(filter: string): string | null {
  const levels = filter.split('/');
  const bad = levels.some(
    (level, i) =>
      (level.includes('#') && (level !== '#' || i !== levels.length - 1)) || (level.includes('+') && level !== '+'),
  );
  return bad ? '+ stands for one whole level, # for the rest and only at the end; correct the filter' : null;
}

/** Whether a filter matches a topic (MQTT 3.1.1 section 4.7.1; `a/#` matches `a` too). */
export function filterCovers(filter: string, topic: string): boolean {
  const wanted = filter.split('/');
  const levels = topic.split('/');
  for (let i = 0; i < wanted.length; i += 1) {
    if (wanted[i] === '#') return true;
    if (i >= levels.length || (wanted[i] !== '+' && wanted[i] !== levels[i])) return false;
  }
  return wanted.length === levels.length;
}
