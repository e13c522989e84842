import { Histogram } from '@ebbline/shared/statistics/histogram';
import { describe, expect, it } from 'vitest';
import { openMetricsText } from '../../../../../backend/src/connections/metrics/open-metrics-text';
import { programFamilies, type ProgramFacts } from '../../../../../backend/src/connections/metrics/program-families';
import { figureOf, readOpenMetrics } from '../../../../helpers/open-metrics';

const took = (): Histogram => new Histogram([0.1, 1]);
const writes = () => ({ seconds: took(), refused: 0, entries: 0 });

const facts = (more: Partial<ProgramFacts> = {}): ProgramFacts => ({
  figures: {
    ticks: { lag: took(), duration: took(), slice: took() },
    journalWrites: { ...writes(), refused: 2 },
    historyWrites: writes(),
    requests: { seconds: took(), rows: () => [{ route: '/api/units', statusClass: '2xx', count: 4 }] },
    feed: { clients: 1, framesSent: 20, framesSkipped: 3 },
    log: { lines: 11, heldBack: 12_345 },
    brokerRefused: () => ({ signIn: 2, publish: 1, subscribe: 0 }),
    site: () => ({ units: 0, unitsSilent: 0, alarms: [], skippedS: 0 }),
  },
  program: {
    threadDelay: { medianS: 0.001, p99S: 0.02, maximumS: 0.3 },
    residentBytes: 1e8,
    heapBytes: 5e7,
    outsideHeapBytes: 1e6,
    userCpuS: 12,
    systemCpuS: 3,
    runningForS: 60,
    diskFreeBytes: 5e9,
    diskBytes: 1e11,
  },
  history: { state: 'ok', message: null, rowsQueued: 7, bytesKept: 1024 },
  reasons: [{ code: 'DISK_FILLING', message: '' }],
  version: '1.2.3',
  nodeVersion: '20.19.0',
  ...more,
});

const read = (more: Partial<ProgramFacts> = {}) => readOpenMetrics(openMetricsText(programFamilies(facts(more))));

describe('families about the program itself', () => {
  it('tell what was counted, each under its own name', () => {
    const families = read({
      history: {
        state: 'failing',
        message: null,
        rowsQueued: 7,
        bytesKept: 1024,
        putAside: { rows: 90, bytes: 4096, limitBytes: 1e9, sinceMs: 0 },
      },
    });
    const expected: readonly (readonly [string, number, Record<string, string>?])[] = [
      ['ebbline_journal_refused_commits_total', 2],
      ['ebbline_history_queued_rows', 7],
      ['ebbline_history_kept_bytes', 1024],
      ['ebbline_history_put_aside_rows', 90],
      ['ebbline_history_put_aside_bytes', 4096],
      ['ebbline_http_requests_total', 4, { route: '/api/units', status: '2xx' }],
      ['ebbline_broker_refusals_total', 2, { of: 'signIn' }],
      ['ebbline_broker_refusals_total', 0, { of: 'subscribe' }],
      ['ebbline_live_feed_clients', 1],
      ['ebbline_live_feed_sent_frames_total', 20],
      ['ebbline_live_feed_skipped_frames_total', 3],
      ['ebbline_log_lines_total', 11],
      ['ebbline_log_held_back_lines_total', 12_345],
      ['ebbline_event_loop_delay_seconds', 0.02, { quantile: '0.99' }],
      ['ebbline_event_loop_delay_seconds', 0.3, { quantile: '1.0' }],
      ['ebbline_process_resident_memory_bytes', 1e8],
      ['ebbline_process_cpu_seconds_total', 3, { mode: 'system' }],
      ['ebbline_uptime_seconds', 60],
      ['ebbline_disk_free_bytes', 5e9],
      ['ebbline_unwell', 1, { reason: 'DISK_FILLING' }],
      ['ebbline_unwell', 0, { reason: 'JOURNAL_FAILING' }],
      ['ebbline_program_info', 1, { version: '1.2.3', node: '20.19.0' }],
    ];
    for (const [name, value, labels] of expected) expect(figureOf(families, name, labels), name).toBe(value);
  });

  it('give no figure where one is not known, never a zero', () => {
    const { program } = facts();
    const families = read({
      program: { ...program, diskFreeBytes: Number.NaN, diskBytes: Number.NaN },
      history: { state: 'ok', message: null, rowsQueued: 0, bytesKept: null },
    });
    for (const name of ['ebbline_disk_free_bytes', 'ebbline_disk_size_bytes', 'ebbline_history_kept_bytes'])
      expect(families.get(name)?.samples, name).toEqual([]);
  });
});
