import { acceptMessage } from '../quality/accept-message';
import type { Acceptance } from '../sample/acceptance';
import type { RawMessage } from './inputs';
import type { PipelineState } from './pipeline-state';

/** Takes messages into slots, history, and what is known of their gateways. */
export class PipelineIntake {
  constructor(private readonly pipeline: PipelineState) {}

  /** `wallMs`: what the machine's clock says; it may have been stepped since the tick clock was set by it. */
  accept(message: RawMessage, arrivalMs: number, wallMs = arrivalMs): Acceptance {
    const { site, state, intake } = this.pipeline;
    intake.wallMs = wallMs;
    return acceptMessage(site, state, intake, message, arrivalMs, this.hear);
  }

  private readonly hear = (slot: number, sourceMs: number, value: number, reasons: number): void => {
    const { gatewayHeardMs, gatewayOfSlot, history, state } = this.pipeline;
    history.put(slot, sourceMs, value, reasons);
    const gateway = gatewayOfSlot[slot] as number;
    const acceptedMs = state.acceptedMs[slot] as number;
    if (gateway >= 0 && !(acceptedMs <= (gatewayHeardMs[gateway] as number))) gatewayHeardMs[gateway] = acceptedMs;
  };
}
