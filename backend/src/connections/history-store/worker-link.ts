import { Worker } from 'node:worker_threads';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import {
  openingId,
  type WorkerAnswer,
  type WorkerCall,
  type WorkerReply,
  type WorkerRequest,
  type WorkerState,
  type WorkerStore,
} from './worker-messages';

interface Waiting {
  resolve(value: WorkerAnswer): void;
  reject(fault: CodedError): void;
}

/** One life of the store's worker. When it ends, everything that still waits is refused with HISTORY_WORKER_ENDED. */
export class WorkerLink {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  #next = openingId;
  #state: WorkerState | null = null;
  #ended: string | null = null;

  private constructor(file: URL, store: WorkerStore) {
    this.#worker = new Worker(file, { workerData: store });
    this.#worker.on('message', (reply: WorkerReply) => this.#take(reply));
    this.#worker.on('error', (fault: unknown) => this.#end(fault instanceof Error ? fault.message : String(fault)));
    this.#worker.on('exit', (code) => this.#end(`exit code ${code}`));
  }

  static async start(file: URL, store: WorkerStore): Promise<WorkerLink> {
    const link = new WorkerLink(file, store);
    await link.#answerTo(link.#next++);
    return link;
  }

  /** Why it ended, or null while it lives. */
  get ended(): string | null {
    return this.#ended;
  }

  /** As it last told. */
  get state(): WorkerState | null {
    return this.#state;
  }

  /** Arrays in `body` are copied, so that the caller can send them again to a next worker. */
  ask(body: WorkerCall): Promise<WorkerAnswer> {
    const request: WorkerRequest = { id: this.#next++, body };
    const answer = this.#answerTo(request.id);
    if (this.#ended !== null) this.#end(this.#ended);
    else this.#worker.postMessage(request);
    return answer;
  }

  /** Ends it at once, whatever it does. */
  async terminate(): Promise<void> {
    await this.#worker.terminate();
  }

  #answerTo(id: number): Promise<WorkerAnswer> {
    return new Promise((resolve, reject) => this.#waiting.set(id, { resolve, reject }));
  }

  #take(reply: WorkerReply): void {
    this.#state = reply.state ?? this.#state;
    const waiting = this.#waiting.get(reply.id);
    this.#waiting.delete(reply.id);
    if (reply.ok) waiting?.resolve(reply.value);
    else waiting?.reject(new CodedError(reply.code, reply.message));
  }

  #end(why: string): void {
    this.#ended ??= why;
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const one of waiting) {
      one.reject(
        new CodedError(
          'HISTORY_WORKER_ENDED',
          `the history worker ended (${this.#ended}); the next call starts another`,
        ),
      );
    }
  }
}
