/** One thing wrong with a site file: where, what is expected, what to do. */
export interface SiteFault {
  /** Keys from the root of the document to the place, as the file has them. */
  readonly path: readonly (string | number)[];
  readonly message: string;
}

export type FaultPath = readonly (string | number)[];

/** Gathers faults, each once, so that a person sees all of them at one go. */
export class FaultList {
  private readonly byText = new Map<string, SiteFault>();

  add(path: FaultPath, message: string): void {
    this.byText.set(`${path.join('\u0000')}\u0001${message}`, { path, message });
  }

  get list(): readonly SiteFault[] {
    return [...this.byText.values()];
  }

  get size(): number {
    return this.byText.size;
  }
}

export const keyPath = (path: FaultPath): string => path.join('.');
