import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { derivedPointsOfUnit } from '../../backend/src/evaluation/derive/derived-points';
import { explainPoint } from '../../backend/src/evaluation/derive/explain-point';
import { sampleMemory } from '../../backend/src/evaluation/derive/sample-memory';
import { uncertaintyOfReading } from '../../backend/src/evaluation/derive/standard-uncertainty';
import { UnitFrame } from '../../backend/src/evaluation/derive/unit-frame';
import { unitPlan } from '../../backend/src/evaluation/derive/unit-plan';
import type { BuiltSite } from '../helpers/compiled-site-builder';
import { seededDraws } from './draws';

/** As many as keep each case under some seconds; the coverage is then known to 0.07 %. */
const draws = 100_000;

export interface Case {
  /** A site whose slots hold the true values; each sensor states its accuracy. */
  readonly built: BuiltSite;
  readonly point: string;
  /** Rows of the derived table that the point rests on, in their order, itself last. */
  readonly rows: readonly string[];
  /** Sensors that are drawn. */
  readonly sensors: readonly string[];
  /**
   * What the figures of the site file and models are off, in the unit of the value, from standard draws (mean 0, deviation 1)
   * of the distribution that is asked for; `exact` gives what is derived from true readings.
   */
  readonly figures?: (draw: () => number, exact: (id: string) => number) => number;
}

export interface Coverage {
  /** Share of the draws in which the interval value ± U holds the true value. */
  readonly covered: number;
  /** Share of the draws that have a value. */
  readonly defined: number;
}

/**
 * JCGM 101:2008 turned round: true values stand; each draw gives the sensors errors by what they state (rectangular, or normal with the
 * same standard uncertainty, errors of matched pairs going together), the derive stage works value and U out from the readings, and the interval holds the truth or not.
 */
export function coverageOf(
  { built, point, rows, sensors, figures = () => 0 }: Case,
  distribution: 'rectangular' | 'normal',
): Coverage {
  const { site, state } = built;
  const { uniform, normal } = seededDraws(20_260_401);
  const standard = distribution === 'normal' ? normal : (): number => Math.sqrt(3) * (2 * uniform() - 1);
  const frame = new UnitFrame(site, unitPlan(site, 0));
  const derive = derivedPointsOfUnit.filter(({ id }) => rows.includes(id)).map((row) => row.derive);
  const run = (): void => {
    frame.read(state, 1000, false);
    sampleMemory(frame);
    for (const one of derive) one(frame);
  };
  const slots = sensors.map((id) => built.slot(id));
  const truth = slots.map((slot) => state.value[slot] ?? Number.NaN);
  const u = slots.map((slot, i) => uncertaintyOfReading(site.slots, slot, truth[i] ?? Number.NaN));
  if (u.some((one) => !(one > 0))) throw new Error('a sensor that is drawn states no accuracy');
  const target = built.slot(point);
  run();
  const exactly = new Map(site.slots.pointId.map((id, slot) => [id, state.value[slot] ?? Number.NaN] as const));
  const exactOf = (id: string): number => exactly.get(id) ?? Number.NaN;
  const exact = exactOf(point);
  const errors = new Float64Array(slots.length);
  const pairs = (site.units[0]?.matchedPairs ?? []).map(
    ({ slot, mate, correlation }) => [slots.indexOf(slot), slots.indexOf(mate), correlation] as const,
  );
  let defined = 0;
  let covered = 0;
  for (let k = 0; k < draws; k += 1) {
    for (let i = 0; i < slots.length; i += 1) errors[i] = standard();
    for (const [one, other, r] of pairs)
      errors[other] = r * (errors[one] ?? 0) + Math.sqrt(1 - r * r) * (errors[other] ?? 0);
    for (let i = 0; i < slots.length; i += 1)
      state.value[slots[i] ?? -1] = (truth[i] ?? Number.NaN) + (u[i] ?? Number.NaN) * (errors[i] ?? 0);
    run();
    const value = state.value[target] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    defined += 1;
    const off = Math.abs(value - exact - figures(standard, exactOf));
    if (off <= (state.expandedUncertainty[target] ?? Number.NaN)) covered += 1;
  }
  return { covered: covered / defined, defined: defined / draws };
}

/** The input that brings most to the uncertainty of the point, by its budget and by those of the derived points behind it. */
export function largestPart({ built, point }: Case): string {
  const { site, state } = built;
  deriveUnit(site, state, 0, 1000, false);
  const largestOf = (id: string): string => {
    const { parts } = explainPoint(site, state, 0, built.slot(id), false);
    const from = [...parts].sort((a, b) => b.contribution - a.contribution)[0]?.from ?? '';
    const slot = site.slots.pointId.indexOf(from);
    return slot >= 0 && site.slots.measured[slot] !== 1 ? largestOf(from) : from;
  };
  return largestOf(point);
}
