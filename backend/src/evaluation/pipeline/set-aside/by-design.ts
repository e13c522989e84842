import { modes, type Mode } from '@ebbline/shared/contract/http-api';
import type { ModeDetails } from '../../alarm-lifecycle/change-mode';
import type { UnitContext } from '../../alarm-rules/judge-context';
import { stopWasMeant } from '../../alarm-rules/plant-signs/pump-wanted';
import { createContext, fillContext } from '../fill-context';
import type { ModeFound } from '../mode-of-unit';
import { isOff } from '../off-in-mode';
import type { PipelineState } from '../pipeline-state';

/** Why an alarm of a unit is suppressed by design. */
export const byDesign = (mode: Mode): ModeDetails => ({
  modeUntilMs: null,
  modeBy: null,
  modeReason: `by design: this alarm is off while the unit is in mode ${mode}`,
  interimMeasures: null,
});

const contexts = new WeakMap<PipelineState, UnitContext>();

/** Of an alarm that logic suppresses now: why; null where it does not. Only alarms of units are. */
export function suppressedNow(pipeline: PipelineState, alarm: number): ModeDetails | null {
  const judged = pipeline.index.judgedOf(alarm);
  if (judged === null) return null;
  const found = pipeline.modes[judged.unit] as ModeFound;
  if (!isOff(judged.place, modes.indexOf(found.mode), found.told)) return null;
  let context = contexts.get(pipeline);
  if (context === undefined) contexts.set(pipeline, (context = createContext(pipeline)));
  fillContext(pipeline, context, judged.unit, found, pipeline.steppedMs[judged.unit] as number);
  return stopWasMeant(context) === false ? null : byDesign(found.mode);
}
