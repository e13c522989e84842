import type { IncomingMessage, Server } from 'node:http';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AUDIT, type Audit } from '../../ports/audit';
import type { Edge } from '../../ports/edge';
import { ENTRANCE, type Entrance } from '../../ports/entrance';
import type { RateLimits } from '../../ports/rate-limits';
import { REQUEST_COUNTS, type RequestCounts } from '../../ports/web-counts';
import { AccessGuard } from './access.guard';
import { answerBrokenRequests } from './answer-broken-requests';
import { boundConnections } from './bound-connections';
import { countRequests } from './count-requests';
import { guardRequests } from './guard-requests';
import { limitRequests } from './limit-requests';
import { ProblemFilter } from './problem.filter';
import { securityHeaders } from './security-headers';
import { serveFrontend } from './static-frontend';

export interface HttpSurface {
  readonly edge: Edge;
  readonly limits: RateLimits;
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
export function configureHttp(
  app: NestExpressApplication,
  { edge, limits, frontendFolder, report }: HttpSurface,
): void {
  const server: Server = app.getHttpServer();
  answerBrokenRequests(server);
  boundConnections(server);
  app.disable('x-powered-by');
  app.use(countRequests(app.get<symbol, RequestCounts>(REQUEST_COUNTS)));
  app.use(securityHeaders(edge));
  app.use(limitRequests(edge, limits));
  app.use(guardRequests(edge));
  const entrance = app.get<symbol, Entrance>(ENTRANCE);
  // So large a body is not even read for whom the guard will refuse, since reading holds up the judging.
  const mayCheck = (request: IncomingMessage): boolean => {
    const visitor = entrance.visitorOf(request, { token: null, acts: false });
    return visitor.ok && entrance.refusalOf(visitor.value, 'changeSite', undefined) === null;
  };
  app.useBodyParser('json', {
    limit: SITE_FILE_LIMIT,
    strict: true,
    type: (request) => isSiteFile(request) && mayCheck(request),
  });
  app.useBodyParser('json', {
    limit: BODY_LIMIT,
    strict: true,
    type: (request) => !isSiteFile(request) && isJson(request),
  });
  if (frontendFolder !== null) serveFrontend(app, frontendFolder);
  app.useGlobalGuards(new AccessGuard(entrance, app.get<symbol, Audit>(AUDIT), (request) => edge.stationOf(request)));
  app.useGlobalFilters(new ProblemFilter(report));
}

const isJson = (request: IncomingMessage): boolean =>
  /^application\/json\b/i.test(request.headers['content-type'] ?? '');
const isSiteFile = (request: IncomingMessage): boolean => request.url === SITE_FILE_PATH && isJson(request);
