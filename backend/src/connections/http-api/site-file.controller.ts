import { Body, Controller, Get, HttpCode, Inject, Post, Req } from '@nestjs/common';
import {
  checkSiteRequestSchema,
  reloadSiteRequestSchema,
  type SiteCheck,
  type SiteState,
} from '@ebbline/shared/contract/site-state';
import { AUDIT, type Audit } from '../../ports/audit';
import { IDENTITY, type Identity } from '../../ports/identity';
import { SITE_CHECKER, type SiteChecker } from '../../ports/site-check';
import { SITE_IN_FORCE, type SiteInForce } from '../../ports/site-in-force';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import { record } from './record-action';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** The site file: which one is in force, and what would be said of a new one. */
@Controller('api/site')
export class SiteFileController {
  constructor(
    @Inject(SITE_CHECKER) private readonly checker: SiteChecker,
    @Inject(SITE_IN_FORCE) private readonly inForce: SiteInForce,
    @Inject(IDENTITY) private readonly identity: Identity,
    @Inject(AUDIT) private readonly audit: Audit,
  ) {}

  @Get('state')
  state(): SiteState {
    return this.inForce.state();
  }

  @Post('reload')
  @HttpCode(200)
  reload(@Body() body: unknown, @Req() request: WebRequest): Promise<SiteState> {
    checkInput(reloadSiteRequestSchema, body, 'BODY_MALFORMED');
    record(this.audit, 'siteReloadAsked', actorOf(this.identity, request), 'asked to read the site file anew');
    return this.inForce.reload();
  }

  @Post('check')
  @HttpCode(200)
  async check(@Body() body: unknown): Promise<SiteCheck> {
    const { text } = checkInput(checkSiteRequestSchema, body, 'BODY_MALFORMED');
    const answer = await this.checker.check(text);
    if (!answer.ok) throw new ProblemError(answer.fault.code, answer.fault.message);
    return answer.value;
  }
}
