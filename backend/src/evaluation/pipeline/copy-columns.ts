import { CodedError } from '@ebbline/shared/errors/coded-error';

/** From places in new columns to places in old ones; −1 = there was none. */
export interface PlaceMap {
  readonly before: Int32Array;
  readonly countBefore: number;
}

/** By id: whoever has the same one is the same. */
export function mapById(before: readonly string[], now: readonly string[]): PlaceMap {
  const places = new Map(before.map((id, place) => [id, place]));
  return { before: Int32Array.from(now, (id) => places.get(id) ?? -1), countBefore: before.length };
}

type Columns = Float64Array | Float32Array | Int32Array | Uint32Array | Uint16Array | Uint8Array;

const isColumns = (value: unknown): value is Columns => ArrayBuffer.isView(value) && !(value instanceof DataView);

/**
 * Copies what is remembered of everything that is still there from one memory into a fresh one of the same kind. A
 * memory is columns, each with the same number of cells in a row for each place; lists with one element a place; and
 * memories within it. Cells of what is new stay as they were made.
 * @throws CodedError TAKE_OVER_SHAPE where a column has not the same cells for every place: a mistake of ours
 */
export function copyColumns(from: object, to: object, map: PlaceMap): void {
  for (const key of Object.keys(from)) {
    const old = Reflect.get(from, key) as unknown;
    const fresh = Reflect.get(to, key) as unknown;
    if (isColumns(old)) copyColumn(key, old, fresh, map);
    else if (Array.isArray(old)) copyList(key, old, fresh, map);
    else if (isMemory(old) && isMemory(fresh)) copyColumns(old, fresh, map);
  }
}

const isMemory = (value: unknown): value is object => typeof value === 'object' && value !== null;

function copyColumn(key: string, old: Columns, fresh: unknown, { before, countBefore }: PlaceMap): void {
  const cells = countBefore === 0 ? 0 : old.length / countBefore;
  if (!isColumns(fresh) || !Number.isInteger(cells) || (countBefore > 0 && fresh.length !== cells * before.length))
    throw misshapen(key);
  for (let place = 0; place < before.length; place += 1) {
    const was = before[place] as number;
    if (was >= 0) fresh.set(old.subarray(was * cells, (was + 1) * cells), place * cells);
  }
}

function copyList(key: string, old: readonly unknown[], fresh: unknown, { before, countBefore }: PlaceMap): void {
  if (!Array.isArray(fresh) || old.length !== countBefore || fresh.length !== before.length) throw misshapen(key);
  for (let place = 0; place < before.length; place += 1) {
    const was = before[place] as number;
    if (was >= 0) fresh[place] = old[was];
  }
}

const misshapen = (key: string): CodedError =>
  new CodedError('TAKE_OVER_SHAPE', `what is remembered as ${key} has not the same cells for every place`);
