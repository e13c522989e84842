import { everyShape, type Rationale } from '../entry';

/** Nothing at all comes from a gateway. One alarm a gateway, whatever number of points hang on it. */
export const com1: Rationale<'COM-1'> = {
  id: 'COM-1',
  title: 'Nothing comes from a gateway',
  cause:
    'Gateway, network or broker down, power lost there, or its clock wrong or set back, so that what it sends is refused or counts as late.',
  consequence: 'The units behind it are not watched: nothing shown of them is of now.',
  action: everyShape(
    'Walk to the units behind the gateway and read them there; then see whether gateway, network or power has failed.',
  ),
  confirm:
    'See whether the neighbouring gateways still send; if none does, the broker or the network is down. The intake counts show messages that come but are refused or late.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 0, offDelayMs: 3000 },
  unitOfMeasure: null,
  basis: 'Proposal of this project: silent for three periods of the fastest point, at least 5 s.',
};
