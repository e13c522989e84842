/** So many numbers each alarm's rule may keep between seconds. */
export const cellsOfRule = 4;

/** What rules remember, NaN before the first: `cellsOfRule` numbers for each alarm, that of another unit never mixed in. */
export class RuleMemory {
  private readonly cells: Float64Array;

  constructor(alarms: number) {
    this.cells = new Float64Array(alarms * cellsOfRule).fill(Number.NaN);
  }

  get(alarm: number, cell: number): number {
    return this.cells[alarm * cellsOfRule + cell] as number;
  }

  set(alarm: number, cell: number, value: number): void {
    this.cells[alarm * cellsOfRule + cell] = value;
  }
}
