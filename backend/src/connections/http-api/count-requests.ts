import type { ServerResponse } from 'node:http';
import type { RequestCounts } from '../../ports/web-counts';
import { routeTemplate } from './route-template';
import type { Next, WebRequest } from './web-types';

/** Counts every request once its answer has ended, or its connection has; refused ones too. */
export const countRequests =
  (counts: RequestCounts) =>
  (request: WebRequest, response: ServerResponse, next: Next): void => {
    const route = routeTemplate(request.path);
    const beganMs = performance.now();
    response.once('close', () => counts.count(route, response.statusCode, (performance.now() - beganMs) / 1000));
    next();
  };
