import { Worker } from 'node:worker_threads';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { SiteJob, SiteJobValue } from './site-jobs';

export interface SiteWorkerLimits {
  /** A job that takes longer is ended, ms. */
  readonly timeMs: number;
  /** A job that needs more is ended, MB. */
  readonly memoryMb: number;
}

export interface SiteWorkerRun<Value> {
  /** What came of the job, or what to tell of one that was ended. @throws what the job throws */
  readonly outcome: Promise<Result<Value, string>>;
  /** Ends it now. */
  readonly end: () => Promise<unknown>;
}

/** Does one job in a thread of its own, which ends with it. */
export function runSiteWorker<Job extends SiteJob>(
  file: URL,
  job: Job,
  { timeMs, memoryMb }: SiteWorkerLimits,
): SiteWorkerRun<SiteJobValue[Job['job']]> {
  type Value = SiteJobValue[Job['job']];
  const worker = new Worker(file, { workerData: job, resourceLimits: { maxOldGenerationSizeMb: memoryMb } });
  const outcome = new Promise<Result<Value, string>>((resolve, reject) => {
    const limit = setTimeout(() => {
      resolve(
        fail(`judging it took longer than ${timeMs / 1000} s and was ended; divide the file, or try again later`),
      );
      void worker.terminate();
    }, timeMs);
    worker.once('message', (value: Value) => resolve(ok(value)));
    worker.once('error', (fault: unknown) => {
      if (isOutOfMemory(fault))
        resolve(fail(`judging it needs more than ${memoryMb} MB and was ended; divide the file`));
      else reject(fault instanceof Error ? fault : new Error(String(fault)));
    });
    worker.once('exit', () => {
      clearTimeout(limit);
      resolve(fail('judging it was ended before it was done'));
    });
  });
  return { outcome, end: () => worker.terminate() };
}

const isOutOfMemory = (fault: unknown): boolean =>
  fault instanceof Error && 'code' in fault && fault.code === 'ERR_WORKER_OUT_OF_MEMORY';
