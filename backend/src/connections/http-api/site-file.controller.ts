import { Body, Controller, Get, HttpCode, Inject, Post } from '@nestjs/common';
import {
  checkSiteRequestSchema,
  reloadSiteRequestSchema,
  type SiteCheck,
  type SiteState,
} from '@ebbline/shared/contract/site-state';
import { SITE_CHECKER, type SiteChecker } from '../../ports/site-check';
import { SITE_IN_FORCE, type SiteInForce } from '../../ports/site-in-force';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';

/** The site file: which one is in force, and what would be said of a new one. */
@Controller('api/site')
export class SiteFileController {
  constructor(
    @Inject(SITE_CHECKER) private readonly checker: SiteChecker,
    @Inject(SITE_IN_FORCE) private readonly inForce: SiteInForce,
  ) {}

  @Get('state')
  state(): SiteState {
    return this.inForce.state();
  }

  @Post('reload')
  @HttpCode(200)
  reload(@Body() body: unknown): Promise<SiteState> {
    checkInput(reloadSiteRequestSchema, body, 'BODY_MALFORMED');
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
