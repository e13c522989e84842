import type { GuidedCurve } from '@ebbline/shared/contract/guided-curve';
import {
  exponentRange,
  fitResistanceCurve,
  onCurve,
  type ResistanceCurve,
  type ResistancePoint,
} from '@ebbline/shared/heat/fit-resistance-curve';
import { coverageFactorOf, effectiveDegreesOfFreedom } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { resistanceU, type PlatePoint } from './plate-points';

/** Flows that lie nearer than this are one flow; the largest has to be so many times the least. Own rules. */
const sameFlowWithin = 1.05;
const leastSpread = 1.5;
/** An exponent is fitted from so many flows, which span so much; else it is taken as the site file has it. Own rules. */
const flowsForExponent = 4;
const spreadForExponent = 2;
const drawn = 41;
const m3PerS = 1 / 60_000;

/** A curve with how far each of its values may be off. */
export interface PlateCurve {
  readonly curve: ResistanceCurve;
  readonly fitsExponent: boolean;
  /** Of anything that is worked out of the curve: expanded uncertainty for 95.45 %. */
  readonly spread: (of: (curve: ResistanceCurve) => number) => number;
  readonly coverage: (of: (curve: ResistanceCurve) => number) => number;
  /** The exponent stands at an end of its range, or would where a point is off by its uncertainty: it is not known. */
  readonly exponentAtEnd: boolean;
}

const flowsOf = (points: readonly PlatePoint[]): readonly number[] => {
  const sorted = points.map(({ flowLPerMin }) => flowLPerMin).sort((a, b) => a - b);
  return sorted.filter((flow, i) => i === 0 || flow > sameFlowWithin * (sorted[i - 1] ?? 0));
};

/** Why no curve goes through these; null: one may. */
export function notFitted(points: readonly PlatePoint[]): string | null {
  const flows = flowsOf(points);
  if (flows.length < 3) return 'No curve: it takes three flows that differ.';
  return (flows.at(-1) ?? 0) < leastSpread * (flows[0] ?? 0)
    ? `No curve: the largest flow has to be ${leastSpread} times the least.`
    : null;
}

/** A source of error: what the points were where it is off by its standard uncertainty. */
interface Source {
  readonly shifted: readonly ResistancePoint[];
  readonly degreesOfFreedom: number;
}

/**
 * The curve through the points. Each source of error is carried through the whole fit (GUM 5.1.3, note 2): thermometers and meters
 * are the same at every point and shift all of them together (5.2.2, r = 1), scatter shifts each alone.
 */
export function plateCurve(points: readonly PlatePoint[], usualExponent: number): PlateCurve | null {
  const flows = flowsOf(points);
  const fitsExponent =
    flows.length >= flowsForExponent && (flows.at(-1) ?? 0) >= spreadForExponent * (flows[0] ?? Infinity);
  const exponent = fitsExponent ? null : usualExponent;
  const plain = points.map((one) => shiftedBy(one, {}));
  const curve = notFitted(points) === null ? fitResistanceCurve(plain, exponent) : null;
  if (curve === null) return null;
  const sources = sourcesOf(points, curve, fitsExponent);
  const found = sources.flatMap(({ shifted, degreesOfFreedom }) => {
    const other = fitResistanceCurve(shifted, exponent);
    return other === null ? [] : [{ curve: other, degreesOfFreedom }];
  });
  // Within what the points may be off the resistance need not fall with flow: then nothing is known of the curve.
  if (found.length < sources.length) return null;
  const offOf = (of: (one: ResistanceCurve) => number): { readonly u: number; readonly factor: number } => {
    const parts = found.map((one) => ({
      contribution: of(one.curve) - of(curve),
      degreesOfFreedom: one.degreesOfFreedom,
    }));
    const u = Math.hypot(...parts.map(({ contribution }) => contribution));
    const observed = parts.filter(({ degreesOfFreedom }) => Number.isFinite(degreesOfFreedom));
    return { u, factor: coverageFactorOf(effectiveDegreesOfFreedom(u, observed)) };
  };
  return {
    curve,
    fitsExponent,
    exponentAtEnd: fitsExponent && [curve, ...found.map((one) => one.curve)].some(atEnd),
    spread: (of) => offOf(of).u * offOf(of).factor,
    coverage: (of) => offOf(of).factor,
  };
}

const atEnd = ({ exponent }: ResistanceCurve): boolean =>
  exponent - exponentRange.least < 1e-3 || exponentRange.most - exponent < 1e-3;

const shiftedBy = (
  point: PlatePoint,
  {
    kelvin = 0,
    watts = 0,
    flow = 0,
    resistance = 0,
  }: Partial<Record<'kelvin' | 'watts' | 'flow' | 'resistance', number>>,
): ResistancePoint => ({
  flow: point.flowLPerMin + flow,
  resistance: (point.resistance * point.watts + kelvin) / (point.watts + watts) + resistance,
  u: resistanceU(point),
});

function sourcesOf(points: readonly PlatePoint[], curve: ResistanceCurve, fitsExponent: boolean): readonly Source[] {
  const common = (shift: (point: PlatePoint) => Parameters<typeof shiftedBy>[1]): Source => ({
    shifted: points.map((point) => shiftedBy(point, shift(point))),
    degreesOfFreedom: Infinity,
  });
  const left = points.length - (fitsExponent ? 3 : 2);
  const squares = points.reduce((sum, one) => sum + (one.resistance - onCurve(curve, one.flowLPerMin)) ** 2, 0);
  const about = left > 0 ? Math.sqrt(squares / left) : 0;
  return [
    common(({ caseU }) => ({ kelvin: caseU })),
    common(({ supplyU }) => ({ kelvin: supplyU })),
    common(({ powerU }) => ({ watts: powerU })),
    common(({ flowU }) => ({ flow: flowU })),
    ...points.map((moved): Source => ({
      shifted: points.map((point) =>
        shiftedBy(point, point === moved ? { resistance: Math.max(point.scatter, about) } : {}),
      ),
      degreesOfFreedom: about > moved.scatter ? left : moved.degreesOfFreedom,
    })),
  ];
}

/** Points, curve and residuals as the record draws them. */
export function drawnCurve(points: readonly PlatePoint[], fit: PlateCurve | null): GuidedCurve {
  const flows = points.map(({ flowLPerMin }) => flowLPerMin);
  const [least, most] = [Math.min(...flows), Math.max(...flows)];
  const along =
    fit === null ? [] : Array.from({ length: drawn }, (_, i) => least * (most / least) ** (i / (drawn - 1)));
  return {
    across: { title: 'Flow', quantity: 'volumeFlow' },
    up: { title: 'Resistance, case to supply', quantity: 'thermalResistance' },
    law: fit === null ? '' : 'R = R₀ + c · (Q ÷ 1 L/min)⁻ⁿ',
    said:
      fit === null
        ? (notFitted(points) ?? 'No curve: within what the points may be off, the resistance need not fall with flow.')
        : how(fit, points),
    points: points.map((point) => ({
      title: `Point ${point.place}`,
      across: point.flowLPerMin * m3PerS,
      acrossUncertainty: coverageFactor * point.flowU * m3PerS,
      up: point.resistance,
      upUncertainty: coverageFactorAt(point) * resistanceU(point),
      above: fit === null ? null : point.resistance - onCurve(fit.curve, point.flowLPerMin),
    })),
    line: along.map((flow) => ({
      across: flow * m3PerS,
      up: fit === null ? Number.NaN : onCurve(fit.curve, flow),
      uncertainty: fit === null ? Number.NaN : fit.spread((one) => onCurve(one, flow)),
    })),
    terms: fit === null ? [] : termsOf(fit),
  };
}

const coverageFactorAt = (point: PlatePoint): number =>
  coverageFactorOf(
    effectiveDegreesOfFreedom(resistanceU(point), [
      { contribution: point.scatter, degreesOfFreedom: point.degreesOfFreedom },
    ]),
  );

const how = ({ fitsExponent, exponentAtEnd, curve }: PlateCurve, points: readonly PlatePoint[]): string => {
  const by = `Least squares through ${points.length} points, weights by their uncertainty; thermometers and meters are the same at every point and shift all together.`;
  if (!fitsExponent)
    return `${by} n is not fitted: as the site file has it. To fit it takes ${flowsForExponent} flows, the largest ${spreadForExponent} times the least.`;
  if (exponentAtEnd) return `${by} The points do not hold n: within what they may be off it could be any.`;
  return curve.exponent < 0.3 || curve.exponent > 0.8
    ? `${by} n lies outside 0.3 to 0.8, where plates lie: look at the flow meter and at the points.`
    : by;
};

const termsOf = ({ curve, spread, fitsExponent, exponentAtEnd }: PlateCurve): GuidedCurve['terms'] => [
  {
    ...{ symbol: 'R₀', title: 'what flow does not change', quantity: 'thermalResistance', value: curve.fixed },
    expandedUncertainty: spread((one) => one.fixed),
  },
  {
    ...{ symbol: 'c', title: 'what flow changes, at 1 L/min', quantity: 'thermalResistance', value: curve.convective },
    expandedUncertainty: spread((one) => one.convective),
  },
  {
    ...{ symbol: 'n', title: 'exponent', quantity: null, value: curve.exponent },
    expandedUncertainty: fitsExponent && !exponentAtEnd ? spread((one) => one.exponent) : null,
  },
];
