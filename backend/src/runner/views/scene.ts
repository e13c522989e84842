import type { Flood } from '@ebbline/shared/contract/alarm-performance';
import type { ClockState } from '@ebbline/shared/contract/http-api';
import type { AlarmTexts } from '../../evaluation/pipeline/alarm-texts';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { BrokerState } from '../../ports/broker-link';

/** An alarm as it is to be shown: as the journal has it, or marked as not yet recorded. */
export interface ShownAlarm {
  readonly record: AlarmRecord;
  readonly recorded: boolean;
}

/** Of the judge what a picture of a hall or a loop is drawn from: the running one, or a past second put together anew. */
export type ShownPipeline = Pick<
  Pipeline,
  'site' | 'state' | 'permits' | 'alerts' | 'detailOf' | 'modeOf' | 'pressureWindow' | 'path'
>;

/** What a picture of a hall or a loop is drawn from. */
export type PictureScene = Omit<Scene, 'pipeline' | 'broker' | 'flood'> & {
  readonly pipeline: ShownPipeline;
};

/** Everything that the views look at. */
export interface Scene {
  readonly pipeline: Pipeline;
  /** Time in force, ms; NaN on the source clock before the first sample. */
  readonly nowMs: () => number;
  readonly clock: () => ClockState;
  readonly broker: () => BrokerState;
  readonly alarms: () => readonly ShownAlarm[];
  /** What is set aside, and so is not among `alarms`. */
  readonly setAside: () => readonly ShownAlarm[];
  /** The flood of alarms that goes on; null or left out: none. */
  readonly flood?: () => Flood | null;
  readonly textsOf: (record: AlarmRecord) => AlarmTexts;
}
