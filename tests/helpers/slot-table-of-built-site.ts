import { pointDefinition } from '@ebbline/shared/contract/point-table';
import { Reference, type SlotTable } from '../../backend/src/evaluation/site/compiled-site';

/** Which sensors tell gauge pressure, and accuracies that are not the usual ones: half-widths, or standard uncertainties. */
export interface SlotOptions {
  readonly gauge?: readonly string[];
  readonly accuracy?: Readonly<Record<string, readonly [absolute: number, relative: number]>>;
  readonly normal?: Readonly<Record<string, number>>;
}

const nothingStated = [Number.NaN, Number.NaN] as const;
const accuracyByQuantity: Readonly<Record<string, readonly [number, number]>> = {
  temperature: [0.15, 0.002],
  absolutePressure: [400, Number.NaN],
  volumeFlow: [Number.NaN, 0.005],
  freeAirFlow: [Number.NaN, 0.03],
  power: [Number.NaN, 0.01],
  relativeHumidity: [0.025, Number.NaN],
};

/** The columns of a built site: every point each second, SI, without a range, as accurate as usual sensors are. */
export function slotTable(ids: readonly string[], hallPoints: number, options: SlotOptions): SlotTable {
  const gauge = new Set(options.gauge);
  const fill = (value: number): Float64Array => new Float64Array(ids.length).fill(value);
  const definitions = ids.map((id) => pointDefinition(id));
  const accuracies = ids.map(
    (id, i) =>
      (options.normal?.[id] === undefined ? undefined : ([0, 0] as const)) ??
      options.accuracy?.[id] ??
      (id === 'ambient.pressure' ? ([100, Number.NaN] as const) : accuracyByQuantity[definitions[i]?.quantity ?? '']) ??
      nothingStated,
  );
  return {
    count: ids.length,
    pointId: ids,
    unitOfMeasure: definitions.map((definition) => definition?.unit ?? '1'),
    holder: Int32Array.from(ids, (_, i) => (i < hallPoints ? 0 : 1)),
    measured: Uint8Array.from(definitions, (definition) =>
      definition?.kind !== 'measured' ? 0 : definition.id.endsWith('.hand') ? 2 : 1,
    ),
    factor: fill(1),
    offset: fill(0),
    reference: Uint8Array.from(ids, (id, i) =>
      definitions[i]?.quantity !== 'absolutePressure'
        ? Reference.none
        : gauge.has(id)
          ? Reference.gauge
          : Reference.absolute,
    ),
    minimum: fill(-Infinity),
    maximum: fill(Infinity),
    jumpPerS: fill(Infinity),
    periodMs: fill(1000),
    stuckMs: fill(Infinity),
    accuracyAbsolute: Float64Array.from(accuracies, ([absolute]) => absolute),
    accuracyRelative: Float64Array.from(accuracies, ([, relative]) => relative),
    accuracyNormalAbsolute: Float64Array.from(ids, (id) => options.normal?.[id] ?? 0),
    accuracyNormalRelative: fill(0),
  };
}
