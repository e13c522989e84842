import type { CanActivate, ExecutionContext } from '@nestjs/common';
import type { Audit } from '../../ports/audit';
import type { Entrance, EntranceFault, Visitor } from '../../ports/entrance';
import { ProblemError } from './problem-error';
import { rightOfRoute, type GuardedRoute } from './right-of-route';
import type { WebRequest } from './web-types';
import { noteVisitor } from './who-asks';

type Routed = WebRequest & { readonly route?: { readonly path?: string } };

/** Before every route: who asks, and whether they may. What is refused stands in the journal, but for looks of who is not signed in. */
export class AccessGuard implements CanActivate {
  constructor(
    private readonly entrance: Entrance,
    private readonly audit: Pick<Audit, 'write'>,
    private readonly stationOf: (request: WebRequest) => string,
  ) {}

  canActivate(context: ExecutionContext): boolean {
    // Sockets are looked at where they come in.
    if (context.getType() !== 'http') return true;
    const request = context.switchToHttp().getRequest<Routed>();
    const route = rightOfRoute(request.method, request.route?.path ?? '');
    const acts = one(request.headers['x-ebbline-acts']) === '1';
    const known = this.entrance.visitorOf(request, { token: null, acts });
    const nobody: Visitor = { caller: null, rights: [], station: this.stationOf(request) };
    const visitor = known.ok ? known.value : nobody;
    noteVisitor(request, visitor);
    if (route.right === null) return true;
    const csrf = request.method === 'POST' ? (one(request.headers['x-ebbline-csrf']) ?? null) : undefined;
    const refusal = known.ok ? this.entrance.refusalOf(visitor, route.right, csrf) : known.fault;
    if (refusal === null) return true;
    this.note(request, route, visitor, refusal);
    throw new ProblemError(refusal.code, refusal.message);
  }

  private note(
    { method }: WebRequest,
    { key }: GuardedRoute,
    { caller, station }: Visitor,
    { code }: EntranceFault,
  ): void {
    if (method !== 'POST' && code === 'SIGN_IN_NEEDED') return;
    this.audit.write({ cause: 'actionRefused', actor: caller?.name ?? null, station, reason: `${code}: ${key}` });
  }
}

const one = (header: string | readonly string[] | undefined): string | undefined =>
  typeof header === 'string' ? header : header?.[0];
