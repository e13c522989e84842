/** Times in the site's zone: the people who read them stand there. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string, withDate: boolean): Intl.DateTimeFormat {
  const key = `${zone} ${String(withDate)}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    ...(withDate ? { year: 'numeric', month: '2-digit', day: '2-digit' } : {}),
    hourCycle: 'h23',
  });
  formats.set(key, made);
  return made;
}

function partsOf(iso: string, zone: string, withDate: boolean): Map<string, string> {
  return new Map(
    formatOf(zone, withDate)
      .formatToParts(new Date(iso))
      .map((part) => [part.type, part.value]),
  );
}

/** `15:42:08` */
export function formatClock(iso: string, zone: string): string {
  const parts = partsOf(iso, zone, false);
  return `${parts.get('hour') ?? ''}:${parts.get('minute') ?? ''}:${parts.get('second') ?? ''}`;
}

/** `2026-11-25 15:42:08` */
export function formatMoment(iso: string, zone: string): string {
  const parts = partsOf(iso, zone, true);
  return `${parts.get('year') ?? ''}-${parts.get('month') ?? ''}-${parts.get('day') ?? ''} ${formatClock(iso, zone)}`;
}

/** The clock alone on the day of `now`, else with the date before it. */
export function formatSince(iso: string, now: string | null, zone: string): string {
  const moment = formatMoment(iso, zone);
  if (now === null) return moment;
  return formatMoment(now, zone).slice(0, 10) === moment.slice(0, 10) ? formatClock(iso, zone) : moment;
}

/** Whether a moment has come by the clock in force; false where either is not known. */
export function isPast(iso: string | null, now: string | null): boolean {
  return iso !== null && now !== null && Date.parse(now) >= Date.parse(iso);
}
