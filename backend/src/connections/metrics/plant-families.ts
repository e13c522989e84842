import type { Intake } from '@ebbline/shared/contract/http-api';
import { refusalCodes } from '../../evaluation/sample/acceptance';
import type { BrokerState } from '../../ports/broker-link';
import type { OwnFigures, SiteFigures } from '../../ports/own-figures';
import { counter, gauge, histogram, type MetricFamily } from './metric-family';

export interface PlantFacts {
  readonly intake: Intake;
  readonly broker: BrokerState;
  readonly held: number;
  readonly lastSampleAgeS: number | null;
  readonly site: SiteFigures;
  readonly ticks: OwnFigures['ticks'];
}

/** What comes in from the plant and how it is judged. */
export const plantFamilies = (facts: PlantFacts): readonly MetricFamily[] => [
  ...intakeFamilies(facts),
  ...judged(facts),
];

const intakeFamilies = ({ intake, broker, held, lastSampleAgeS }: PlantFacts): readonly MetricFamily[] => [
  gauge('ebbline_broker_connected', '1 while the broker is reached.', broker.state === 'connected' ? 1 : 0),
  counter('ebbline_intake_messages', 'Messages that came in.', intake.messages),
  counter(
    'ebbline_intake_refused_messages',
    'Messages of which all or a field was refused, by reason.',
    refusalCodes.map((reason) => ({
      labels: { reason },
      value: intake.refusals.find(({ code }) => code === reason)?.count ?? 0,
    })),
  ),
  counter('ebbline_intake_retained_messages', 'Messages that the broker had kept.', intake.retained),
  counter('ebbline_intake_samples', 'Samples taken.', intake.samples),
  counter('ebbline_intake_late_samples', 'Samples that came late: kept in history only.', intake.late),
  counter('ebbline_intake_repeated_samples', 'Samples that had come before.', intake.repeated),
  gauge('ebbline_intake_held_acknowledgements', 'Acknowledgements to the broker that wait for a commit.', held),
  gauge(
    'ebbline_newest_sample_age_seconds',
    'Since the newest sample was taken; absent before the first.',
    lastSampleAgeS === null ? [] : [{ value: lastSampleAgeS }],
  ),
];

const judged = ({ site, ticks }: PlantFacts): readonly MetricFamily[] => [
  gauge('ebbline_units', 'Units of the site file in force.', site.units),
  gauge('ebbline_units_silent', 'Units of which no measured point is fresh.', site.unitsSilent),
  gauge(
    'ebbline_alarms_standing',
    'Standing alarms by priority, and whether someone has acknowledged them.',
    site.alarms.map(({ priority, acknowledged, count }) => ({
      labels: { priority: String(priority), acknowledged: acknowledged ? 'yes' : 'no' },
      value: count,
    })),
  ),
  histogram('ebbline_evaluation_lag_seconds', 'How late the oldest slice of a tick was once it was judged.', ticks.lag),
  histogram('ebbline_evaluation_tick_seconds', 'How long a tick took, with all slices due in it.', ticks.duration),
  histogram('ebbline_evaluation_slice_seconds', 'How long a slice took, by the mean of its tick.', ticks.slice),
  counter('ebbline_evaluation_skipped_seconds', 'Time that was left out, being too far behind.', site.skippedS),
];
