import type { RouteLocationRaw } from 'vue-router';

/** Whereto a figure leads: what stands behind it where it is worked out, its trend where it is measured. */
export interface Lead {
  readonly to: RouteLocationRaw | null;
  readonly hint: string;
  /** Class of the link. */
  readonly look: 'opens' | 'fact-value';
}

/** The figures of a branch that lead on. */
export type BranchFigure =
  'flow' | 'flowShare' | 'heatRemoved' | 'returnTemperature' | 'returnPressure' | 'vacuumMargin' | 'hottestPlate';
