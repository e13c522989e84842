import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import type { WettedNode } from '../../backend/src/evaluation/site/compiled-site';
import { buildSite, runUnitM, type SiteOptions } from '../helpers/compiled-site-builder';

/** Sensors that the hand-built site leaves out unless a table needs them. */
export const secondSensors = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure'] as const;

/** What a derived point is when unit M runs with these measured values in place of its own. */
export function onUnitM(point: string, values: Readonly<Record<string, number>>, options: SiteOptions = {}): number {
  const built = buildSite(options);
  runUnitM(built);
  for (const [id, value] of Object.entries(values)) built.set(id, value);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built.value(point);
}

/** A wetted node level with the tank that its main's pressures are counted from, without loss: it has the tank's pressure. */
export const nodeAtTank = (main: WettedNode['main']): readonly WettedNode[] => [
  { id: main, name: main, main, elevationM: main === 'supply' ? 1 : 1.2, lossAtRatedFlowPa: 0, place: 0 },
];
