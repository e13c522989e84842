import type { IncomingMessage } from 'node:http';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { AccessPolicy } from '../../ports/access-policy';
import { answerBrokenRequests } from './answer-broken-requests';
import { guardRequests } from './guard-requests';
import { ProblemFilter } from './problem.filter';
import { securityHeaders } from './security-headers';
import { serveFrontend } from './static-frontend';

export interface HttpSurface {
  readonly policy: AccessPolicy;
  /** The built screens; null serves the API alone. */
  readonly frontendFolder: string | null;
  /** Where a fault of this program is told. */
  readonly report: (fault: unknown) => void;
}

/** The largest body we take: a name and a comment. */
const BODY_LIMIT = '16kb';
/** But for a whole site file to be checked. */
const SITE_FILE_PATH = '/api/site/check';
const SITE_FILE_LIMIT = '4mb';

/** Everything around the routes, in the order in which a request meets it. */
export function configureHttp(app: NestExpressApplication, { policy, frontendFolder, report }: HttpSurface): void {
  answerBrokenRequests(app.getHttpServer());
  app.disable('x-powered-by');
  app.use(securityHeaders());
  app.use(guardRequests(policy));
  app.useBodyParser('json', { limit: SITE_FILE_LIMIT, strict: true, type: isSiteFile });
  app.useBodyParser('json', { limit: BODY_LIMIT, strict: true, type: 'application/json' });
  if (frontendFolder !== null) serveFrontend(app, frontendFolder);
  app.useGlobalFilters(new ProblemFilter(report));
}

const isSiteFile = (request: IncomingMessage): boolean =>
  request.url === SITE_FILE_PATH && /^application\/json\b/i.test(request.headers['content-type'] ?? '');
