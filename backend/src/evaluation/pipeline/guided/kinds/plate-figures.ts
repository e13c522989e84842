import type { GuidedFigure } from '@ebbline/shared/contract/guided-test';
import { onCurve, slopeOn } from '@ebbline/shared/heat/fit-resistance-curve';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { figureOf } from '../figure-of';
import { chosen, type GuidedView } from '../guided-view';
import { judged } from '../move-on';
import type { PlateCurve } from './plate-curve';
import { caseOf, type PlatePoint } from './plate-points';

/** R = (t_case − t_supply)/P with its parts; held against the limit where that holds at each point. */
export function plateFigure(view: GuidedView, point: PlatePoint): GuidedFigure {
  const { flowLPerMin, flowBand, watts, powerU, resistance, scatter, degreesOfFreedom, caseU, supplyU } = point;
  const most = chosen(view, 'most');
  return figureOf({
    title: `Point ${point.place}: at ${flowLPerMin} ± ${flowBand} L/min and ${watts} W`,
    quantity: 'thermalResistance',
    value: resistance,
    low: null,
    high: most > 0 && !(chosen(view, 'at') > 0) ? most : null,
    scatter: { from: 'scatter', contribution: scatter, degreesOfFreedom },
    others: [
      { from: caseOf(view), contribution: caseU / watts },
      { from: 'supply.temperature', contribution: supplyU / watts },
      { from: 'heater power', contribution: Math.abs(resistance * powerU) / watts },
    ],
  });
}

/** The same by the curve, at the flow at which the limit holds; null where none is asked for, or the curve does not reach so far. */
export function plateFigureByCurve(
  view: GuidedView,
  points: readonly PlatePoint[],
  fit: PlateCurve | null,
): GuidedFigure | null {
  const [at, most] = [chosen(view, 'at'), chosen(view, 'most')];
  const flows = points.map(({ flowLPerMin }) => flowLPerMin);
  if (fit === null || !(at >= Math.min(...flows) && at <= Math.max(...flows))) return null;
  const limit = { low: null, high: most > 0 ? most : null };
  const held = {
    value: onCurve(fit.curve, at),
    expandedUncertainty: fit.spread((one) => onCurve(one, at)),
    ...limit,
  };
  return {
    title: `By the curve, at ${at} L/min`,
    quantity: 'thermalResistance',
    ...held,
    coverageFactor: fit.coverage((one) => onCurve(one, at)),
    verdict: limit.high === null ? null : judged(held),
    budget: [],
  };
}

/** What a reader has to know beside the figures. */
export function plateNotes(
  view: GuidedView,
  points: readonly PlatePoint[],
  fit: PlateCurve | null,
  byCurve: boolean,
): string[] {
  const far = points.flatMap((point) => {
    const above = fit === null ? 0 : point.resistance - onCurve(fit.curve, point.flowLPerMin);
    // Thermometers move the curve with its points. What is left is held against scatter, and against meters that are off a band.
    const alone = Math.hypot(
      point.scatter,
      (point.resistance * point.powerU) / point.watts,
      fit === null ? 0 : slopeOn(fit.curve, point.flowLPerMin) * point.flowU,
    );
    return Math.abs(above) > coverageFactor * alone ? [`point ${point.place}`] : [];
  });
  return [
    'Case to supply: beside a resistance that is referred to the mean of the water it reads higher.',
    'Heat that leaves the heater other than into the water is not taken off its power.',
    ...(far.length > 0
      ? [
          `Farther from the curve than scatter and meters explain: ${far.join(', ')}. Look for bubbles, contact, and a flow that had not settled.`,
        ]
      : []),
    ...(chosen(view, 'at') > 0 && !byCurve
      ? ['The limit holds at a flow that no curve of these points reaches, so nothing is judged.']
      : []),
  ];
}
