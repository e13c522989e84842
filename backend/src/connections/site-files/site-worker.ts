import { parentPort, workerData } from 'node:worker_threads';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { doSiteJob, type SiteJob } from './site-jobs';

/** Entry of a worker that does the one job of `workerData`, answers, and ends. */
const port = parentPort;
if (port === null) throw new CodedError('SITE_WORKER_MISUSED', 'site-worker is started as a worker, not by itself');
port.postMessage(await doSiteJob(workerData as SiteJob));
