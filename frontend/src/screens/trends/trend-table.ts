import type { Site } from '@ebbline/shared/contract/http-api';
import { alignLines } from '../../charts/align-lines';
import type { Cell } from '../../charts/lane';
import type { CsvCell } from '../../text/csv-table';
import { csvTable } from '../../text/csv-table';
import { pointTitle } from '../../text/point-title';
import { toZoneLocal } from '../../text/zone-time';
import type { TrendLane, TrendLine } from './trend-lane';

/** Digits that a value keeps: beyond these there is only the noise of adding up. */
const digits = 9;

/** Name of a line with its unit, as a person reads it. */
export function lineName({ beside, point, unit }: TrendLine, site: Site | null): string {
  const known = site?.units.find(({ id }) => id === unit);
  const name = `${known?.name ?? unit} ${pointTitle(point, known)}`;
  return beside === null ? name : `${name}, ${beside}`;
}

/**
 * What is drawn as a table: a row a time, in UTC and in the site's zone, and of each line mean, least, most and uncertainty in the unit of
 * measure of its axis. Of a line that is held beside the others the time is that at which it is drawn. A gap is an empty cell.
 * A line whose history could not be read has empty cells too: the head of its columns says so, as it says all that is to be known of them.
 * @param from @param to ends of what is shown, s since 1970 @param failures by the key of a line
 */
export function trendTable(
  lanes: readonly TrendLane[],
  {
    failures,
    from,
    site,
    to,
    zone,
  }: {
    readonly from: number;
    readonly to: number;
    readonly site: Site | null;
    readonly zone: string;
    readonly failures?: ReadonlyMap<string, string>;
  },
): string {
  const lines = lanes.flatMap((lane) => lane.lines.map((line) => ({ line, unit: lane.scale.unit })));
  const { columns, seconds } = alignLines(lines.map(({ line }) => line));
  const header = [
    'time (UTC)',
    `time (${zone})`,
    ...lines.flatMap(({ line, unit }) => {
      const unread = failures?.has(line.key) === true ? ', could not be read' : '';
      const of = `${lineName(line, site)}${unread}${unit === '' ? '' : `, ${unit}`}`;
      const own = [`${of}, mean`, `${of}, least`, `${of}, most`];
      return line.uncertainty === null ? own : [...own, `${of}, expanded uncertainty (k = 2)`];
    }),
  ];
  const rows = seconds.flatMap((at, row): CsvCell[][] => {
    const cells = lines.flatMap(({ line }, index) => {
      const column = columns[index];
      const own = [column?.mean[row], column?.min[row], column?.max[row]];
      return line.uncertainty === null ? own : [...own, column?.uncertainty[row]];
    });
    if (at < from || at > to || cells.every((cell) => cell === undefined)) return [];
    const iso = new Date(at * 1000).toISOString();
    return [[iso, toZoneLocal(iso, zone).replace('T', ' '), ...cells.map(rounded)]];
  });
  return csvTable(header, rows);
}

const rounded = (cell: Cell): number | null => (typeof cell === 'number' ? Number(cell.toPrecision(digits)) : null);
