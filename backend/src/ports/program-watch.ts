/** What the running process takes of its machine, and how late its own thread comes to its work. */
export interface ProgramFigures {
  /** Of the last ten seconds or so, s. */
  readonly threadDelay: { readonly medianS: number; readonly p99S: number; readonly maximumS: number };
  readonly residentBytes: number;
  readonly heapBytes: number;
  readonly outsideHeapBytes: number;
  readonly userCpuS: number;
  readonly systemCpuS: number;
  readonly runningForS: number;
  /** Of the disk of the data folder; NaN where the system does not tell. */
  readonly diskFreeBytes: number;
  readonly diskBytes: number;
}

export interface ProgramWatch {
  figures(): ProgramFigures;
  /** The worst delay of the thread since this was last asked, s: asked by one only. */
  takeWorstDelayS(): number;
}

export const PROGRAM_WATCH = Symbol('ProgramWatch');
