import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Reading } from '@ebbline/shared/contract/reading';
import { laneLine } from '../../charts/lane-line';
import type { Conversion } from '../../text/shown-unit';
import { spreadInUnit } from '../../text/shown-unit';
import type { TrendName } from '../../text/trend-link';
import type { Comparison } from './compared';
import { keyOf } from './trend-address';
import type { TrendLine } from './trend-lane';
import type { UncertaintyTrack } from './uncertainty-at';
import { uncertaintyAt, withNow } from './uncertainty-at';

type Live = ReadonlyMap<string, readonly { readonly seconds: number; readonly value: number | null }[]>;

export interface LineSources {
  readonly columns: ReadonlyMap<string, HistoryColumns>;
  readonly live: Live;
  readonly newest: ReadonlyMap<string, Reading>;
  /** By `unit:point`; null: uncertainty is not to be drawn. */
  readonly uncertainties: ReadonlyMap<string, UncertaintyTrack> | null;
}

/** What is held beside the lines, with the history that was read for it. */
export interface Compared {
  readonly comparison: Comparison;
  readonly columns: ReadonlyMap<string, HistoryColumns>;
}

const letters = 'abcdefghijklmnopqrstuvwxyz';
export const letterOf = (index: number): string => letters[index] ?? '?';
const nothing = { seconds: [], min: [], mean: [], max: [] };
const noTrack: UncertaintyTrack = { seconds: [], expanded: [] };

/** The line of a point. @param index place among the chosen points @param of from the contract's unit of measure to the one shown */
export function lineOf(sources: LineSources, name: TrendName, index: number, of: Conversion): TrendLine {
  const key = keyOf(name);
  const history = sources.columns.get(key);
  const drawn = history === undefined ? nothing : laneLine(history, of, sources.live.get(key) ?? []);
  const track = withNow(sources.uncertainties?.get(key) ?? noTrack, sources.newest.get(key));
  const uncertainty =
    sources.uncertainties === null
      ? null
      : drawn.seconds.map((at) => {
          const expanded = uncertaintyAt(track, at);
          return expanded === null ? null : spreadInUnit(expanded, of);
        });
  return { ...name, key, letter: letterOf(index), ink: index, ...drawn, uncertainty, beside: null, isOfNow: true };
}

/** The line beside that of a point; null where there is none. */
export function besideLine(
  { columns, comparison }: Compared,
  live: Live,
  name: TrendName,
  index: number,
  of: Conversion,
): TrendLine | null {
  const { earlierSeconds, mark, sign, words } = comparison;
  const other = comparison.of(name);
  if (other === null) return null;
  const key = keyOf(other);
  const history = columns.get(key);
  const isOfNow = earlierSeconds === 0;
  const drawn = history === undefined ? nothing : laneLine(history, of, isOfNow ? (live.get(key) ?? []) : []);
  return {
    ...other,
    key: `${key}:${mark}`,
    letter: `${letterOf(index)}${sign}`,
    ink: index,
    ...drawn,
    seconds: drawn.seconds.map((at) => at + earlierSeconds),
    uncertainty: null,
    mark,
    beside: words,
    isOfNow,
  };
}
