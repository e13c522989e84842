import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { Readings } from '../plant/plant-readings';
import type { PlantState } from '../plant/plant-state';
import type { ShapeParts } from './shape-faults';

/** The plant of one unit, of whatever shape. */
export interface UnitPlant {
  readonly parameters: PlantParameters;
  readonly inputs: PlantInputs;
  /** What only this shape has, for its own faults. */
  readonly parts: ShapeParts;
  /** Runs for one second at the present inputs. */
  advance(): void;
  /** True values by point. */
  read(): Readings;
  /** Tanks, mains and racks as operations look at them; they change nothing there. */
  operated(): PlantState;
}

/** How long a plant runs unseen before its first second, so that it starts at rest. */
export const settlingS = 900;
/** Nothing happens fast meanwhile. */
export const settlingStepS = 0.2;

/**
 * Plants that came to rest before, by unit or loop: whoever makes many simulations of one seed and start hands the same
 * map to all of them, and each plant settles once.
 */
export type SettledPlants = Map<string, object>;

/** The state at rest: from the map, or settled now and left there; always a copy of its own. */
export function atRest<State extends object>(settled: SettledPlants, id: string, settle: () => State): State {
  const kept = (settled.get(id) as State | undefined) ?? settle();
  settled.set(id, kept);
  return structuredClone(kept);
}
