import type { DuckDBConnection, DuckDBDataChunk } from '@duckdb/node-api';
import type { HistorySeconds, TogetherQuery } from '../../../ports/history-store';
import type { SecondsPlan } from '../history-query';
import { SecondColumns } from '../second-columns';
import type { Catalogue } from './catalogue';
import type { DamagedFiles } from './damaged-files';
import { findColumns } from './find-columns';
import { damagedFault, readFault } from './read-fault';
import type { ReadSources } from './read-sql';
import { samePlaces, type SamePlaces } from './same-places';
import { marksAtOnce, secondsSql } from './seconds-sql';

/** So many holders a statement: some hundred thousand values a minute that is read. */
const holdersAtOnce = 64;

/**
 * Columns of holders as they were written, tails and sealed files merged. Holders that have their columns at the same places share a
 * statement: planning one over many columns takes longer than reading a minute of one holder.
 * @param plans of the same period
 * @throws CodedError HISTORY_READ_FAILED, also where a file is known to hold something else than was sealed
 */
export async function readSeconds(
  connection: DuckDBConnection,
  plans: readonly (SecondsPlan & Pick<TogetherQuery, 'ofEachMinuteMs'>)[],
  catalogue: Catalogue,
  sources: ReadSources,
  damaged: Pick<DamagedFiles, 'changed' | 'note'>,
): Promise<HistorySeconds[]> {
  const columns = plans.map((plan) => new SecondColumns(plan));
  const found = plans.map((plan) => findColumns(catalogue, plan));
  for (const group of samePlaces(found, holdersAtOnce)) {
    const [plan] = plans;
    const statement = plan === undefined ? null : secondsSql(plan, group, sources);
    if (statement === null) continue;
    const changed = damaged.changed(statement.files);
    if (changed.length > 0) throw damagedFault(changed);
    try {
      const result = await connection.run(statement.sql);
      for (const chunk of await result.fetchAllChunks()) {
        if (group.holders.length === 1) takeOne(chunk, group, columns);
        else takeMany(chunk, group, columns);
      }
    } catch (cause) {
      throw await readFault(connection, sources.folder, statement.files, group.positions[0] ?? 0, cause, (names) =>
        damaged.note(names),
      );
    }
  }
  const { retiredBeforeMs } = sources.manifest;
  return columns.map((one) => one.seconds(retiredBeforeMs));
}

/** Where the marks of a column stand among those of a row. */
const marksAt = (positions: number, place: number): number => 1 + positions + Math.floor(place / marksAtOnce);
const shiftOf = (place: number): number => 2 * (place % marksAtOnce);
const markOf = (packed: number, shift: number): number => (packed < 0 ? packed : (packed >> shift) & 3);

/** Column after column, straight from the vectors: it may be a day of seconds. */
function takeOne(chunk: DuckDBDataChunk, { positions, holders }: SamePlaces, columns: readonly SecondColumns[]): void {
  const [holder] = holders;
  const target = columns[holder?.asked ?? -1];
  if (holder === undefined || target === undefined) return;
  const seconds = chunk.getColumnVector(0);
  // Asking the chunk again for each row costs more than all the rest.
  const { rowCount } = chunk;
  holder.found.forEach(({ column }, place) => {
    const values = chunk.getColumnVector(1 + place);
    const marks = chunk.getColumnVector(marksAt(positions.length, place));
    const direct = target.column(column);
    const shift = shiftOf(place);
    for (let row = 0; row < rowCount; row += 1) {
      const packed = marks.getItem(row) as number;
      const second = seconds.getItem(row) as number;
      const value = values.getItem(row) as number;
      if (packed < 0 && Number.isFinite(value)) {
        direct.values[second] = value;
        direct.quality[second] = good;
      } else target.put(column, second, value, markOf(packed, shift));
    }
  });
}

/** Column after column too, each row to its holder. */
function takeMany(chunk: DuckDBDataChunk, { positions, holders }: SamePlaces, columns: readonly SecondColumns[]): void {
  const placeOf = new Map(holders.map(({ number }, i) => [number, i]));
  const numbers = chunk.getColumnVector(marksAt(positions.length, positions.length - 1) + 1);
  const seconds = chunk.getColumnVector(0);
  const { rowCount } = chunk;
  const holderOf = Int32Array.from({ length: rowCount }, (_, row) => placeOf.get(numbers.getItem(row) as number) ?? -1);
  const secondOf = Int32Array.from({ length: rowCount }, (_, row) => seconds.getItem(row) as number);
  for (let place = 0; place < positions.length; place += 1) {
    const values = chunk.getColumnVector(1 + place);
    const marks = chunk.getColumnVector(marksAt(positions.length, place));
    const shift = shiftOf(place);
    const targets = holders.map(({ asked, found }) => {
      const [all, column] = [columns[asked], found[place]?.column ?? -1];
      return all === undefined || column < 0 ? null : { all, column, ...all.column(column) };
    });
    for (let row = 0; row < rowCount; row += 1) {
      const target = targets[holderOf[row] ?? -1];
      if (target === null || target === undefined) continue;
      const second = secondOf[row] ?? -1;
      const value = values.getItem(row) as number;
      const mark = markOf(marks.getItem(row) as number, shift);
      if (Number.isFinite(value)) {
        target.values[second] = value;
        target.quality[second] = mark > 0 ? mark : good;
      } else target.all.put(target.column, second, value, mark);
    }
  }
}

const good = 1;
