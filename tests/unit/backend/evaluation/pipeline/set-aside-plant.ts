import { createPipeline } from '../../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { Shelve, TakeOutOfService } from '../../../../../backend/src/evaluation/pipeline/inputs';
import type { ActionOutcome, AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { Plant } from './plant';

export const who = { operator: 'Ada', station: 'desk', comment: 'sensor is being changed' } as const;

type Asked = Pick<Shelve, 'kind' | 'forMs'> | Pick<TakeOutOfService, 'kind' | 'interimMeasures' | 'plannedEndMs'>;

export const putAside = (plant: Plant, alarm: string, asked: Asked): ActionOutcome =>
  plant.pipeline.act({ alarm, ...who, ...asked }, plant.nowMs);

/** How often the entry was annunciated so far. */
export const annunciations = (plant: Plant, entry: string): number =>
  plant.transitions.filter((one) => one.entry === entry && one.to === 'unacknowledged').length;

/** What tells a new program how far the clock of the one before had come. */
export type Reached = 'journal' | 'memory' | 'nothing';

/** The plant under a new program that took back what the journal of the one before holds, `downS` seconds later by its clock. */
export function restartedPlant(before: Plant, downS: number, reached: Reached = 'nothing'): Plant {
  const text = JSON.stringify([...before.pipeline.standing(), ...before.pipeline.setAside()]);
  const after = new Plant(before.site);
  after.second = before.second + downS;
  after.pipeline = createPipeline(before.site, { clock: 'wall', startMs: after.nowMs });
  after.pipeline.restore(JSON.parse(text) as AlarmRecord[], reached === 'journal' ? before.nowMs : Number.NaN);
  if (reached === 'memory') after.pipeline.recall(before.pipeline.learnt(before.nowMs));
  return after;
}
