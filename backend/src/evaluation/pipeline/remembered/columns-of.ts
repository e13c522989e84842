/** Numbers of a memory: so many cells in a row for each place. */
export type Cells = Float64Array | Float32Array | Int32Array | Uint32Array | Uint16Array | Uint8Array;

export interface Column {
  readonly path: string;
  readonly cells: Cells;
}

const isCells = (value: unknown): value is Cells => ArrayBuffer.isView(value) && !(value instanceof DataView);
const isMemory = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Every column of a memory and of the memories within it, by its path, in a fixed order. What is no column is left out. */
export function columnsOf(memory: object, path = ''): readonly Column[] {
  return Object.keys(memory)
    .sort()
    .flatMap((key) => {
      const value = Reflect.get(memory, key) as unknown;
      const here = path === '' ? key : `${path}.${key}`;
      if (isCells(value)) return [{ path: here, cells: value }];
      return isMemory(value) ? columnsOf(value, here) : [];
    });
}
