import { formatMoment } from '../text/format-time';

const day = 86_400;

/**
 * Words under a time axis: the clock, with the date under the first tick and wherever a day begins; the date alone
 * where ticks stand a day or more apart. In the site's zone, whatever the browser's.
 * @param splits s since 1970 @param step s between two of them
 */
export function timeTicks(splits: readonly number[], step: number, zone: string): string[] {
  let before = '';
  return splits.map((seconds) => {
    const [date = '', clock = ''] = formatMoment(new Date(seconds * 1000).toISOString(), zone).split(' ');
    const fresh = date !== before;
    before = date;
    if (step >= day) return date;
    const time = step < 60 ? clock : clock.slice(0, 5);
    return fresh ? `${time}\n${date}` : time;
  });
}
