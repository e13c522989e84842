import { expect, test } from 'vitest';
import { of, plantOf, RunningPlant, type Control } from '../run-plant';

/**
 * A cut of H that was mended: water leaves the separator for the pipes, and the gas above it fills their room, so
 * that its pressure sinks (ideal gas). The limit between the two controls is our own: half a band below the band's edge.
 */
const limitKPa = 30.5;

function lowestKPa(control: Control): number {
  const plant = new RunningPlant(plantOf('H', control));
  const cut = plant.start({ fault: 'cutServerHose' });
  plant.at(60);
  plant.repair(cut);
  return Math.min(...Array.from({ length: 60 }, (_, i) => of(plant.at(61 + i), 'separator.pressure'))) / 1000;
}

test('a source that runs on holds the separator by its bleed while the pipes fill again', () => {
  expect(lowestKPa('continuous')).toBeGreaterThan(limitKPa);
});

test('one that only starts and stops lets the pressure sink below its band', () => {
  expect(lowestKPa('startStop')).toBeLessThan(limitKPa);
});
