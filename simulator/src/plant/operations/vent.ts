import type { Operation } from './operation';
import { platesAreCool } from './where-it-stands';

/** The gas spaces count as vented within so much of ambient pressure, Pa. */
const ventedWithinPa = 1000;

/**
 * For work on the vessels, under a permit: load off, plates cool, flow off, vacuum off, both tanks let up to ambient
 * pressure. Low pipes then stand above ambient by their head of water.
 */
export const vent: Operation = {
  kind: 'vent',
  title: 'vent for work under permit',
  inRack: false,
  step({ state, inputs, sinceS }) {
    const { orders } = inputs;
    orders.loadPermitted = false;
    if (orders.mode !== 'vented') orders.mode = 'stopping';
    if (!platesAreCool(state) && sinceS < 600) return false;
    orders.loopOpen = false;
    orders.pumpOn = false;
    orders.facilityOpen = false;
    orders.vacuumOn = false;
    orders.vented = true;
    orders.mode = 'vented';
    return state.last.separatorPa > inputs.ambientPa - ventedWithinPa;
  },
};
