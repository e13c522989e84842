import { parentPort, workerData } from 'node:worker_threads';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { unreachable } from '@ebbline/shared/errors/unreachable';
import { armFailpoint } from '../../ports/failpoint';
import type { HistorySeconds } from '../../ports/history-store';
import { DuckDbHistoryStore, type EmbeddedHistoryOptions } from './embedded/duckdb-history-store';
import { openingId, type WorkerAnswer, type WorkerCall, type WorkerReply, type WorkerRequest } from './worker-messages';

/** Entry of the store's worker: opens the store that `workerData` names and answers `WorkerRequest`s. */
const port = parentPort;
if (port === null)
  throw new CodedError('HISTORY_WORKER_MISUSED', 'history-worker is started as a worker, not by itself');

const reply = (message: WorkerReply): void => {
  port.postMessage(
    message,
    columnsOf(message.ok ? message.value : null).map((column) => column.buffer as ArrayBuffer),
  );
};

const ofSeconds = ({ values, quality }: HistorySeconds) => [...values, ...quality];

/** What is handed over, not copied. */
function columnsOf(value: WorkerAnswer): readonly (Float64Array | Uint8Array)[] {
  if (value === null) return [];
  if ('together' in value) return value.together.flatMap(ofSeconds);
  if ('minutes' in value) return value.minutes.flatMap(({ min, mean, max, count }) => [min, mean, max, count]);
  if ('quality' in value) return ofSeconds(value);
  return [value.startMs, value.min, value.mean, value.max, value.count];
}

const refusal = (id: number, fault: unknown, store: DuckDbHistoryStore | null): WorkerReply => {
  const code = fault instanceof CodedError ? fault.code : 'HISTORY_FAULT';
  const message = fault instanceof Error ? fault.message : String(fault);
  return { id, ok: false, code, message: message.replace(`${code}: `, ''), health: store?.health() ?? null };
};

async function answer(store: DuckDbHistoryStore, body: WorkerCall): Promise<WorkerAnswer> {
  switch (body.call) {
    case 'useLayout':
      return store.useLayout(body.layout).then(() => null);
    case 'write':
      return store.write(body.rows).then(() => null);
    case 'read':
      return store.read(body.query);
    case 'readSeconds':
      return store.readSeconds(body.query);
    case 'readTogether':
      return { together: await store.readTogether(body.query) };
    case 'readMinute':
      return { minutes: await store.readMinute(body.query) };
    case 'maintain':
      return store.maintain(body.nowMs).then(() => null);
    case 'close':
      return store.close().then(() => null);
    default:
      return unreachable(body);
  }
}

armFailpoint(process.env['EBBLINE_TEST_FAILPOINT'], () => process.kill(process.pid, 'SIGKILL'));
try {
  const store = await DuckDbHistoryStore.open(workerData as EmbeddedHistoryOptions);
  port.on('message', ({ id, body }: WorkerRequest) => {
    answer(store, body)
      .then((value) => {
        reply({ id, ok: true, value, health: store.health() });
        if (body.call === 'close') port.close();
      })
      .catch((fault: unknown) => reply(refusal(id, fault, store)));
  });
  reply({ id: openingId, ok: true, value: null, health: store.health() });
} catch (fault) {
  reply(refusal(openingId, fault, null));
  port.close();
}
