import { Body, Controller, HttpCode, Inject, Post } from '@nestjs/common';
import { checkSiteRequestSchema, type SiteCheck } from '@ebbline/shared/contract/site-state';
import { SITE_CHECKER, type SiteChecker } from '../../ports/site-check';
import { checkInput } from './check-input';

/** The site file: what would be said of a new one. */
@Controller('api/site')
export class SiteFileController {
  constructor(@Inject(SITE_CHECKER) private readonly checker: SiteChecker) {}

  @Post('check')
  @HttpCode(200)
  check(@Body() body: unknown): SiteCheck {
    return this.checker.check(checkInput(checkSiteRequestSchema, body, 'BODY_MALFORMED').text);
  }
}
