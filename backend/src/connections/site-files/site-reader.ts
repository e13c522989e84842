import type { SiteChecker } from '../../ports/site-check';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { notJudged } from './check-site-text';
import { NewestFirst } from './newest-first';
import type { SiteReading } from './read-site-file';
import { runSiteWorker, type SiteWorkerLimits, type SiteWorkerRun } from './run-site-worker';
import { doSiteJob, type SiteJob, type SiteJobValue, type unchanged } from './site-jobs';

/** A screen waits 30 s for what is said of a text; for the file in force nobody waits. */
const usual: Readonly<Record<SiteJob['job'], SiteWorkerLimits>> = {
  check: { timeMs: 25_000, memoryMb: 1536 },
  try: { timeMs: 25_000, memoryMb: 1536 },
  read: { timeMs: 120_000, memoryMb: 1536 },
};

const overtaken = 'A newer text was sent before the turn of this one came, so this one was not judged; send it again.';

/** Reads and checks site files beside everything else: in threads of their own where their program is built. */
export class SiteReader implements SiteChecker {
  private readonly checks = new NewestFirst();
  private readonly runs = new Set<SiteWorkerRun<unknown>>();

  /** @param worker the built `site-worker.ts`; null does the work on this thread */
  constructor(
    private readonly worker: URL | null,
    private readonly limits: typeof usual = usual,
    /** The site file into which lines are tried. */
    private readonly siteFile = '',
  ) {}

  async check(text: string): ReturnType<SiteChecker['check']> {
    const done = await this.checks.run(() => this.do({ job: 'check', text }));
    if (done === null) return fail({ code: 'SITE_CHECK_OVERTAKEN', message: overtaken });
    return ok(done.ok ? done.value : notJudged(done.fault));
  }

  async tryLines(lines: string): ReturnType<SiteChecker['tryLines']> {
    const done = await this.checks.run(() => this.do({ job: 'try', file: this.siteFile, lines }));
    if (done === null) return fail({ code: 'SITE_CHECK_OVERTAKEN', message: overtaken });
    return ok(done.ok ? done.value : { text: null, check: notJudged(done.fault) });
  }

  /** The file on the disk, or that it is the one of `knownHash` still. Whoever asks sees to it that it is asked once at a time. */
  async read(file: string, knownHash: string): Promise<SiteReading | typeof unchanged> {
    const done = await this.do({ job: 'read', file, knownHash });
    if (done.ok) return done.value;
    return { contentHash: null, result: fail([{ line: 1, key: '', message: done.fault }]) };
  }

  /** Ends what still runs. */
  async stop(): Promise<void> {
    await Promise.all([...this.runs].map((run) => run.end()));
  }

  private async do<Job extends SiteJob>(job: Job): Promise<Result<SiteJobValue[Job['job']], string>> {
    if (this.worker === null) return ok((await doSiteJob(job)) as SiteJobValue[Job['job']]);
    const run = runSiteWorker(this.worker, job, this.limits[job.job]);
    this.runs.add(run);
    try {
      return await run.outcome;
    } finally {
      this.runs.delete(run);
    }
  }
}
