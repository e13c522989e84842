import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { CommonCause } from '../alarm-rules/folding';
import { inPowerEvent } from '../alarm-rules/plant-signs/power-lost';
import { ambientFellPa, coldestFellK, dewPointRoseK, highestRosePa } from '../alarm-rules/slow-means';
import type { PipelineState } from './pipeline-state';

/** Ambient pressure so far below its mean of hours is falling weather, Pa: own rule. A usual day, 0.7 kPa, stays below it. */
const fallenPa = 500;
/** A dew point so far above its mean of hours has risen, K: own rule. */
const risenK = 1;
/** The hall explains an alarm where the unit’s own part in it is at most so large beside the hall’s. Own rule. */
const ownShare = 0.5;

/** Whether this cause, which comes over a whole hall, is there and explains the alarm of this unit. */
export function sharesCause(pipeline: PipelineState, hall: number, unitIndex: number, cause: CommonCause): boolean {
  switch (cause) {
    case 'any':
      return true;
    case 'powerLost':
      return inPowerEvent({ plant: pipeline.plant, unitIndex });
    case 'weather': {
      const fell = ambientFellPa(pipeline, hall);
      return (
        fell > fallenPa &&
        othersFell(pipeline, hall, fell) &&
        highestRosePa(pipeline, hall, unitIndex) <= ownShare * fell
      );
    }
    case 'humidity': {
      const rose = dewPointRoseK(pipeline, hall);
      return rose > risenK && coldestFellK(pipeline, hall, unitIndex) <= ownShare * rose;
    }
    default:
      return unreachable(cause);
  }
}

/** Weather comes over all halls: not where the barometer is doubted, nor where no other hall’s has fallen half as far. */
function othersFell(pipeline: PipelineState, hall: number, fell: number): boolean {
  if (isDoubted(pipeline, hall)) return false;
  const falls = pipeline.site.halls
    .map((_, other) => (other === hall || isDoubted(pipeline, other) ? Number.NaN : ambientFellPa(pipeline, other)))
    .filter((fall) => !Number.isNaN(fall));
  return falls.length === 0 || falls.some((fall) => fall > fell / 2);
}

const isDoubted = ({ delays, index }: PipelineState, hall: number): boolean =>
  delays.active[index.ofEntryInGroup('AMB-1', hall)] === 1;
