import { thermalResistance } from '@ebbline/shared/heat/thermal-resistance';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import type { StepRecord } from '../guided-record';
import { uOf, type GuidedView } from '../guided-view';

/** One point of the test: what the bench's meters read, what the program measured, and what may be off. Standard uncertainties. */
export interface PlatePoint {
  readonly place: number;
  readonly flowLPerMin: number;
  /** As typed. */
  readonly flowBand: number;
  readonly flowU: number;
  readonly watts: number;
  readonly powerU: number;
  /** K/W. */
  readonly resistance: number;
  /** By the scatter of both means, K/W, with its degrees of freedom. */
  readonly scatter: number;
  readonly degreesOfFreedom: number;
  /** By the thermometers, which are the same at every point, K. */
  readonly caseU: number;
  readonly supplyU: number;
}

export const caseOf = ({ settings }: GuidedView): string => `plate.${String(settings['plate'] ?? '')}.temperature`;

/** The points that were measured, in their order. */
export function platePoints(view: GuidedView, steps: readonly StepRecord[], most: number): readonly PlatePoint[] {
  const places = Array.from({ length: most }, (_, i) => i + 1);
  return places.map((place) => pointOf(view, steps, place)).filter((one) => one !== null);
}

function pointOf(view: GuidedView, steps: readonly StepRecord[], place: number): PlatePoint | null {
  const given = steps.find(({ id }) => id === `set-${place}`)?.given ?? {};
  const readings = steps.find(({ id }) => id === `point-${place}`)?.measured?.readings ?? [];
  const [plate, supply] = ['case', 'supply'].map((name) => readings.find(({ reading }) => reading === name));
  const typed = (key: string): number => Number(given[key]);
  const watts = typed('power');
  if (plate === undefined || supply === undefined || !(watts > 0)) return null;
  return {
    place,
    flowLPerMin: typed('flow'),
    flowBand: typed('flowBand'),
    flowU: rectangular(typed('flowBand')),
    watts,
    powerU: rectangular(typed('powerBand')),
    resistance: thermalResistance(plate.mean, supply.mean, watts),
    scatter: Math.hypot(plate.scatter, supply.scatter) / watts,
    degreesOfFreedom: Math.min(plate.degreesOfFreedom, supply.degreesOfFreedom),
    caseU: uOf(view, caseOf(view)),
    supplyU: uOf(view, 'supply.temperature'),
  };
}

/** u(R) of one point, K/W: u² = (u_case² + u_supply²)/P² + s² + (R u_P/P)² (GUM eq. 10). */
export const resistanceU = ({ watts, powerU, resistance, scatter, caseU, supplyU }: PlatePoint): number =>
  Math.hypot(caseU / watts, supplyU / watts, scatter, (resistance * powerU) / watts);
