import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import { AUDIT, type Audit } from '../../ports/audit';
import { EDGE, type Edge } from '../../ports/edge';
import { ENTRANCE, type Entrance } from '../../ports/entrance';
import { OPEN_ID, type OpenId, type OpenIdFault } from '../../ports/open-id';
import { PEOPLE, type People, type PeopleFault } from '../../ports/people';
import { readOpenIdCookie, writeOpenIdCookie } from './open-id-cookie';
import type { WebRequest, WebResponse } from './web-types';
import { visitorOf } from './who-asks';

/** There and back again to the identity provider. A browser comes here by itself, so a refusal leads to the page for signing in. */
@Controller('api/session/open-id')
export class OpenIdController {
  constructor(
    @Inject(OPEN_ID) private readonly openId: OpenId,
    @Inject(PEOPLE) private readonly people: People,
    @Inject(ENTRANCE) private readonly entrance: Entrance,
    @Inject(EDGE) private readonly edge: Edge,
    @Inject(AUDIT) private readonly audit: Audit,
  ) {}

  @Get('start')
  async start(@Req() request: WebRequest, @Res() response: WebResponse): Promise<void> {
    const secure = this.edge.isSecure(request);
    const host = one(request.headers['host']) ?? '';
    const begun = await this.openId.begin({ secure, host }, visitorOf(request).caller);
    if (!begun.ok) {
      lead(response, refusedAt(begun.fault));
      return;
    }
    const { address, secret, secretEndsSeconds } = begun.value;
    response.set('Set-Cookie', writeOpenIdCookie(secret, secretEndsSeconds, secure));
    lead(response, address);
  }

  @Get('return')
  async finish(@Req() request: WebRequest & { readonly url: string }, @Res() response: WebResponse): Promise<void> {
    const { station } = visitorOf(request);
    const secure = this.edge.isSecure(request);
    const [, query = ''] = request.url.split('?', 2);
    const finished = await this.openId.finish(query, readOpenIdCookie(one(request.headers['cookie']), secure));
    if (!finished.ok) {
      const { code, message } = finished.fault;
      this.audit.write({ cause: 'signInRefused', actor: null, station, reason: `${code}: ${message}` });
      lead(response, refusedAt(finished.fault));
      return;
    }
    const { who, before } = finished.value;
    const begun = await this.people.signInForeign(who, station);
    if (!begun.ok) {
      lead(response, refusedAt(begun.fault));
      return;
    }
    // Whoever was signed in with this browser before is not any more (ASVS 5.0 V7.2.4).
    if (before !== null && this.people.isInForce(before)) await this.people.endSession(before, false, station);
    response.set('Set-Cookie', [this.entrance.cookieOf(begun.value, request), writeOpenIdCookie('', 0, secure)]);
    lead(response, '/');
  }
}

const refusedAt = ({ code }: OpenIdFault | PeopleFault): string => `/sign-in?refused=${code}`;

const one = (header: string | readonly string[] | undefined): string | undefined =>
  typeof header === 'string' ? header : header?.[0];

/** To another address, to be asked with GET (RFC 9110 section 15.4.4). */
function lead(response: WebResponse, address: string): void {
  response.status(303).set('Location', address).send('');
}
