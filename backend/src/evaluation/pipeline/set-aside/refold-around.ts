import { refoldUnit } from '../fold';
import { refoldGateway } from '../judge-gateways';
import { refoldSystem } from '../judge-system';
import type { PipelineState } from '../pipeline-state';

/** Looks again at what folds under an alarm that was set aside or brought back: a first-out has to be told. */
export function refoldAround(pipeline: PipelineState, alarm: number): void {
  const { index, site } = pipeline;
  const judged = index.judgedOf(alarm);
  if (judged !== null) {
    refoldUnit(pipeline, judged.unit);
    return;
  }
  if (index.systemPlaceOf(alarm) >= 0) refoldSystem(pipeline);
  const gateway = alarm - index.ofGateway(0);
  if (gateway >= 0 && gateway < site.gateways.length) refoldGateway(pipeline, gateway);
}
