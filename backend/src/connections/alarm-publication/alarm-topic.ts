/** `<prefix>/<site>/alarms`, under which each alarm has a topic of its own. */
const folderOf = (prefix: string, site: string): string => `${prefix}/${levelOf(site)}/alarms`;

/** All topics of the alarms of a site: who may write them, and what is never telemetry. */
export const alarmTopics = (prefix: string, site: string): string => `${folderOf(prefix, site)}/#`;

/** Where one alarm is told. */
export const alarmTopic = (prefix: string, site: string, alarm: string): string =>
  `${folderOf(prefix, site)}/${levelOf(alarm)}`;

/**
 * Any text as one level of a topic: percent-encoded as in a URL (RFC 3986, section 2.1), since `/`, `+`, `#` and NUL mean
 * something to a broker (MQTT 3.1.1, section 4.7); `:` stays as it is, for whoever reads.
 */
const levelOf = (text: string): string =>
  encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD')).replaceAll('%3A', ':');
