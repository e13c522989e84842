const utc = /\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d+)?Z/g;

/** A sentence of the journal with the times in it as the clock of the site has them: `2031-05-06 09:08`. */
export function localTimes(text: string, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    ...{ timeZone, year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
    hourCycle: 'h23',
  });
  return text.replace(utc, (iso) => {
    const ms = Date.parse(iso);
    if (!Number.isFinite(ms)) return iso;
    const of = Object.fromEntries(parts.formatToParts(ms).map(({ type, value }) => [type, value]));
    return `${of['year'] ?? ''}-${of['month'] ?? ''}-${of['day'] ?? ''} ${of['hour'] ?? ''}:${of['minute'] ?? ''}`;
  });
}
