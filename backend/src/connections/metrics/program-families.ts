import { healthReasonCodes, type HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { OwnFigures, WritesSoFar } from '../../ports/own-figures';
import type { ProgramFigures } from '../../ports/program-watch';
import type { HistoryHealth } from '../../ports/history-store';
import { counter, gauge, histogram, type Figure, type MetricFamily } from './metric-family';

export interface ProgramFacts {
  readonly figures: OwnFigures;
  readonly program: ProgramFigures;
  readonly history: HistoryHealth;
  readonly reasons: readonly HealthFinding[];
  readonly version: string;
  readonly nodeVersion: string;
}

/** What the program does and takes, whatever the plant is. */
export const programFamilies = (facts: ProgramFacts): readonly MetricFamily[] => [
  ...storeFamilies(facts),
  ...webFamilies(facts.figures),
  counter('ebbline_log_lines', 'Lines of the log written.', facts.figures.log.lines),
  counter(
    'ebbline_log_held_back_lines',
    'Lines that were counted only, too many being alike.',
    facts.figures.log.heldBack,
  ),
  ...processFamilies(facts),
];

const storeFamilies = ({ figures, history }: ProgramFacts): readonly MetricFamily[] => [
  ...writes('journal', 'Entries that the journal took.', figures.journalWrites),
  ...writes('history', 'Rows that history took.', figures.historyWrites),
  gauge('ebbline_history_queued_rows', 'Rows that wait to be written.', history.rowsQueued),
  gauge('ebbline_history_put_aside_rows', 'Rows that wait on the disk.', history.putAside?.rows ?? 0),
  gauge('ebbline_history_put_aside_bytes', 'What they take there.', history.putAside?.bytes ?? 0),
  gauge(
    'ebbline_history_kept_bytes',
    'What history takes on the disk; absent where not known.',
    known(history.bytesKept),
  ),
];

const writes = (store: string, help: string, { seconds, refused, entries }: WritesSoFar): readonly MetricFamily[] => [
  histogram(`ebbline_${store}_commit_seconds`, 'How long a commit took.', seconds),
  counter(`ebbline_${store}_refused_commits`, 'Commits that were refused.', refused),
  counter(`ebbline_${store}_entries`, help, entries),
];

const webFamilies = ({ requests, feed, ...figures }: OwnFigures): readonly MetricFamily[] => [
  counter(
    'ebbline_broker_refusals',
    'What the embedded broker refused: sign-ins, messages and subscriptions.',
    Object.entries(figures.brokerRefused() ?? {}).map(([of, value]) => ({ labels: { of }, value })),
  ),
  counter(
    'ebbline_http_requests',
    'Requests answered, by template of the route and class of status.',
    requests.rows().map(({ route, statusClass, count }) => ({ labels: { route, status: statusClass }, value: count })),
  ),
  histogram('ebbline_http_request_seconds', 'From a request to the end of its answer.', requests.seconds),
  gauge('ebbline_live_feed_clients', 'Clients of the live feed.', feed.clients),
  counter('ebbline_live_feed_sent_frames', 'Frames sent.', feed.framesSent),
  counter('ebbline_live_feed_skipped_frames', 'Changes that a slow client never saw.', feed.framesSkipped),
];

const processFamilies = ({ program, reasons, version, nodeVersion }: ProgramFacts): readonly MetricFamily[] => [
  {
    type: 'summary',
    name: 'ebbline_event_loop_delay_seconds',
    unit: 'seconds',
    help: 'How late the thread of the program comes to its work, of the last ten seconds; quantile 1 is the most.',
    quantiles: [
      { quantile: 0.5, value: program.threadDelay.medianS },
      { quantile: 0.99, value: program.threadDelay.p99S },
      { quantile: 1, value: program.threadDelay.maximumS },
    ],
  },
  gauge('ebbline_process_resident_memory_bytes', 'Memory of the process.', program.residentBytes),
  gauge('ebbline_process_heap_bytes', 'Objects of the program.', program.heapBytes),
  gauge('ebbline_process_outside_heap_bytes', 'Buffers beside them.', program.outsideHeapBytes),
  counter('ebbline_process_cpu_seconds', 'Processor time taken.', [
    { labels: { mode: 'user' }, value: program.userCpuS },
    { labels: { mode: 'system' }, value: program.systemCpuS },
  ]),
  gauge('ebbline_uptime_seconds', 'Since the program was started.', program.runningForS),
  gauge('ebbline_disk_free_bytes', 'Room on the disk of the data folder.', known(program.diskFreeBytes)),
  gauge('ebbline_disk_size_bytes', 'Size of that disk.', known(program.diskBytes)),
  gauge(
    'ebbline_unwell',
    '1 while health gives this reason; those of broker and store stand beside this.',
    healthReasonCodes.map((reason) => ({
      labels: { reason },
      value: reasons.some(({ code }) => code === reason) ? 1 : 0,
    })),
  ),
  { type: 'info', name: 'ebbline_program', help: 'What runs here.', labels: { version, node: nodeVersion } },
];

/** No figure at all where it is not known: never a zero. */
const known = (value: number | null): readonly Figure[] => (value === null || Number.isNaN(value) ? [] : [{ value }]);
