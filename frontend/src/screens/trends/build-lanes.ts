import type { Site } from '@ebbline/shared/contract/http-api';
import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { LimitLine } from '@ebbline/shared/contract/setup';
import { chartScale } from '../../charts/chart-scale';
import type { LaneLimit } from '../../charts/lane';
import { displayUnitOf } from '../../text/display-unit';
import { pointTitle } from '../../text/point-title';
import type { Conversion } from '../../text/shown-unit';
import { inUnit } from '../../text/shown-unit';
import type { TrendName } from '../../text/trend-link';
import type { Compared, LineSources } from './line-of';
import { besideLine, lineOf } from './line-of';
import type { TrendLane } from './trend-lane';

export interface LaneSources extends LineSources {
  readonly points: readonly TrendName[];
  readonly site: Site | null;
  readonly limits: ReadonlyMap<string, readonly LimitLine[]>;
  readonly showLimits: boolean;
  readonly compared: readonly Compared[];
}

const quantityNames: { readonly [quantity: string]: string } = {
  temperature: 'temperature',
  temperatureDifference: 'temperature difference',
  absolutePressure: 'pressure',
  pressureDifference: 'pressure difference',
  volumeFlow: 'water flow',
  freeAirFlow: 'gas flow',
  massFlow: 'mass flow',
  level: 'level',
  power: 'power',
  relativeHumidity: 'relative humidity',
  volume: 'volume',
  duration: 'time left',
  mode: 'mode',
  yesNo: 'yes or no',
  ratio: 'share or ratio',
  ph: 'acidity',
  turbidity: 'turbidity',
  concentration: 'concentration',
  thermalConductance: 'thermal conductance',
  thermalResistance: 'thermal resistance',
  velocity: 'velocity',
  heatFlux: 'heat flux',
  filmCoefficient: 'film coefficient',
  foulingFactor: 'fouling resistance of an area',
  bacteria: 'bacteria',
  conductivity: 'conductivity',
};

/** Chosen points by what they measure and how it is written: one axis each, in the order in which they were chosen. */
export function buildLanes(sources: LaneSources): readonly TrendLane[] {
  const lanes = new Map<string, { -readonly [K in keyof TrendLane]: TrendLane[K] }>();
  sources.points.forEach((name, index) => {
    const quantity = pointDefinition(name.point)?.quantity;
    const display =
      quantity === undefined
        ? { unit: '', factor: 1, decimals: 3 }
        : displayUnitOf(quantity, Infinity, pointPattern(name.point));
    const id = `${quantity ?? name.point} ${display.unit}`;
    const lane = lanes.get(id) ?? {
      id,
      title: [quantityNames[quantity ?? ''] ?? '', display.unit].filter((part) => part !== '').join(', '),
      scale: chartScale(quantity, display),
      lines: [],
      limits: [],
    };
    const beside = sources.compared.flatMap(
      (compared) => besideLine(compared, sources.live, name, index, display) ?? [],
    );
    lane.lines = [...lane.lines, lineOf(sources, name, index, display), ...beside];
    lane.limits = sources.showLimits ? withLimits(lane.limits, sources, name, display) : [];
    lanes.set(id, lane);
  });
  return [...lanes.values()];
}

/** Limits of several units that are the same are one line; what follows a colon in a title is left to the alarm. */
function withLimits(
  before: readonly LaneLimit[],
  sources: LaneSources,
  name: TrendName,
  of: Conversion,
): readonly LaneLimit[] {
  const unit = sources.site?.units.find(({ id }) => id === name.unit);
  const own = (sources.limits.get(name.unit) ?? []).filter(({ point }) => point === name.point);
  const added = own.map(({ entry, title, limit, side }) => {
    const said = `${entry} ${(title.split(':')[0] ?? title).toLowerCase()}, ${side}`;
    return { value: inUnit(limit, of), name: `${said} · ${pointTitle(name.point, unit)}` };
  });
  const known = new Set(before.map((one) => `${one.value} ${one.name}`));
  return [...before, ...added.filter((one) => !known.has(`${one.value} ${one.name}`))];
}
