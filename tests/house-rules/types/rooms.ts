export interface Room {
  readonly config: string;
  /** No Node, no browser, no clock: the compiler must refuse their names. */
  readonly pure: boolean;
}

/** Every tsconfig of the project, each checked as a program of its own. */
export const rooms: readonly Room[] = [
  { config: 'shared/tsconfig.json', pure: true },
  { config: 'backend/src/evaluation/tsconfig.json', pure: true },
  { config: 'backend/src/access/tsconfig.json', pure: true },
  { config: 'backend/src/ports/tsconfig.json', pure: true },
  { config: 'simulator/src/plant/tsconfig.json', pure: true },
  { config: 'simulator/src/faults/tsconfig.json', pure: true },
  { config: 'simulator/src/sensors/tsconfig.json', pure: true },
  { config: 'backend/tsconfig.json', pure: false },
  { config: 'simulator/tsconfig.json', pure: false },
  { config: 'frontend/tsconfig.json', pure: false },
  { config: 'tests/tsconfig.json', pure: false },
];
