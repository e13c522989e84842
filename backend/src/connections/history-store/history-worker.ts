import { parentPort, workerData } from 'node:worker_threads';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { unreachable } from '@ebbline/shared/errors/unreachable';
import { armFailpoint } from '../../ports/failpoint';
import type { HistorySeconds, HistoryStore } from '../../ports/history-store';
import { DuckDbHistoryStore } from './embedded/duckdb-history-store';
import { InfluxHistoryStore } from './influx/influx-history-store';
import {
  openingId,
  stateId,
  type WorkerAnswer,
  type WorkerCall,
  type WorkerReply,
  type WorkerRequest,
  type WorkerState,
  type WorkerStore,
} from './worker-messages';

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

const stateOf = (store: HistoryStore): WorkerState => ({
  health: store.health(),
  waitingFromMs: store.waitingFromMs?.() ?? Infinity,
});

const refusal = (id: number, fault: unknown, store: HistoryStore | null): WorkerReply => {
  const code = fault instanceof CodedError ? fault.code : 'HISTORY_FAULT';
  const message = fault instanceof Error ? fault.message : String(fault);
  return {
    id,
    ok: false,
    code,
    message: message.replace(`${code}: `, ''),
    state: store === null ? null : stateOf(store),
  };
};

async function answer(store: HistoryStore, body: WorkerCall): Promise<WorkerAnswer> {
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
      return store.maintain(body.nowMs, body.age).then(() => null);
    case 'close':
      return store.close().then(() => null);
    default:
      return unreachable(body);
  }
}

const openStore = (asked: WorkerStore): Promise<HistoryStore> => {
  switch (asked.kind) {
    case 'embedded':
      return DuckDbHistoryStore.open(asked.options);
    case 'influx':
      return InfluxHistoryStore.open(asked.options);
    default:
      return unreachable(asked);
  }
};

/** How often it is looked whether the store is otherwise than was last told: what waits goes on without being asked. */
const lookMs = 500;

armFailpoint(process.env['EBBLINE_TEST_FAILPOINT'], () => process.kill(process.pid, 'SIGKILL'));
try {
  const store = await openStore(workerData as WorkerStore);
  let told = '';
  const state = (): WorkerState => {
    const now = stateOf(store);
    told = JSON.stringify(now);
    return now;
  };
  const look = setInterval(() => {
    if (JSON.stringify(stateOf(store)) !== told) reply({ id: stateId, ok: true, value: null, state: state() });
  }, lookMs);
  port.on('message', ({ id, body }: WorkerRequest) => {
    answer(store, body)
      .then((value) => {
        reply({ id, ok: true, value, state: state() });
        if (body.call !== 'close') return;
        clearInterval(look);
        port.close();
      })
      .catch((fault: unknown) => reply(refusal(id, fault, store)));
  });
  reply({ id: openingId, ok: true, value: null, state: state() });
} catch (fault) {
  reply(refusal(openingId, fault, null));
  port.close();
}
