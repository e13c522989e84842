import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  addTokenRequestSchema,
  reasonRequestSchema,
  type NewToken,
  type TokenRow,
} from '@ebbline/shared/contract/people';
import { PEOPLE, type People } from '../../ports/people';
import { checkInput } from './check-input';
import { peopleAnswer } from './people-problem';
import type { WebRequest } from './web-types';
import { callerOf, visitorOf } from './who-asks';

/** Which machines may come in, and for what. */
@Controller('api/tokens')
export class TokensController {
  constructor(@Inject(PEOPLE) private readonly people: People) {}

  @Get()
  list(): { readonly tokens: readonly TokenRow[] } {
    return { tokens: this.people.tokens() };
  }

  @Post()
  @HttpCode(200)
  async add(@Body() body: unknown, @Req() request: WebRequest): Promise<NewToken> {
    const asked = checkInput(addTokenRequestSchema, body, 'BODY_MALFORMED');
    return peopleAnswer(await this.people.addToken(asked, callerOf(request), visitorOf(request).station));
  }

  @Post(':id/withdraw')
  @HttpCode(200)
  async withdraw(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Promise<TokenRow> {
    const { reason } = checkInput(reasonRequestSchema, body, 'BODY_MALFORMED');
    return peopleAnswer(await this.people.withdrawToken(id, reason, callerOf(request), visitorOf(request).station));
  }
}
