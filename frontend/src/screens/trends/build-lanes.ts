import type { HistoryColumns, Site } from '@ebbline/shared/contract/http-api';
import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { Reading } from '@ebbline/shared/contract/reading';
import type { LimitLine } from '@ebbline/shared/contract/setup';
import { chartScale } from '../../charts/chart-scale';
import type { Lane, LaneLimit, LaneLine } from '../../charts/lane';
import { laneLine } from '../../charts/lane-line';
import { displayUnitOf } from '../../text/display-unit';
import { pointTitle } from '../../text/point-title';
import type { TrendName } from '../../text/trend-link';
import { keyOf } from './trend-address';

export interface LaneSources {
  readonly points: readonly TrendName[];
  readonly site: Site | null;
  readonly columns: ReadonlyMap<string, HistoryColumns>;
  readonly live: ReadonlyMap<string, readonly { readonly seconds: number; readonly value: number | null }[]>;
  readonly newest: ReadonlyMap<string, Reading>;
  readonly limits: ReadonlyMap<string, readonly LimitLine[]>;
  readonly showLimits: boolean;
  readonly showUncertainty: boolean;
}

const letters = 'abcdefghijklmnopqrstuvwxyz';
export const letterOf = (index: number): string => letters[index] ?? '?';

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
export function buildLanes(sources: LaneSources): readonly Lane[] {
  const lanes = new Map<string, { -readonly [K in keyof Lane]: Lane[K] }>();
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
    lane.lines = [...lane.lines, lineOf(sources, name, index, display.factor)];
    lane.limits = sources.showLimits ? withLimits(lane.limits, sources, name, display.factor) : [];
    lanes.set(id, lane);
  });
  return [...lanes.values()];
}

function lineOf(sources: LaneSources, name: TrendName, index: number, factor: number): LaneLine {
  const key = keyOf(name);
  const history = sources.columns.get(key);
  const drawn =
    history === undefined
      ? { seconds: [], min: [], mean: [], max: [] }
      : laneLine(history, factor, sources.live.get(key) ?? []);
  const spread = sources.showUncertainty ? (sources.newest.get(key)?.expandedUncertainty ?? null) : null;
  return { key, letter: letterOf(index), ink: index, ...drawn, uncertainty: spread === null ? null : spread * factor };
}

/** Limits of several units that are the same are one line; what follows a colon in a title is left to the alarm. */
function withLimits(
  before: readonly LaneLimit[],
  sources: LaneSources,
  name: TrendName,
  factor: number,
): readonly LaneLimit[] {
  const unit = sources.site?.units.find(({ id }) => id === name.unit);
  const own = (sources.limits.get(name.unit) ?? []).filter(({ point }) => point === name.point);
  const added = own.map(({ entry, title, limit, side }) => {
    const said = `${entry} ${(title.split(':')[0] ?? title).toLowerCase()}, ${side}`;
    return { value: limit * factor, name: `${said} · ${pointTitle(name.point, unit)}` };
  });
  const known = new Set(before.map((one) => `${one.value} ${one.name}`));
  return [...before, ...added.filter((one) => !known.has(`${one.value} ${one.name}`))];
}
