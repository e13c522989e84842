import type { UnitContext } from '../judge-context';

/** A vacuum source that the site file says to be started and stopped: it stands between its cycles. */
export const isStartStop = ({ unit: { vacuumSource } }: Pick<UnitContext, 'unit'>): boolean =>
  vacuumSource?.controlStated === true && vacuumSource.control === 'startStop';

/** Such a source, or one of which the site file does not say how it is held: its standing alone is no trip. */
export const mayRest = (context: Pick<UnitContext, 'unit'>): boolean =>
  context.unit.vacuumSource?.controlStated !== true || isStartStop(context);
