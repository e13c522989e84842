import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  addPersonRequestSchema,
  changePersonRequestSchema,
  reasonRequestSchema,
  type PersonLink,
  type PersonRow,
} from '@ebbline/shared/contract/people';
import { PEOPLE, type People } from '../../ports/people';
import { checkInput } from './check-input';
import { peopleAnswer } from './people-problem';
import type { WebRequest } from './web-types';
import { callerOf, visitorOf } from './who-asks';

/** Who may sign in, and what they may do. */
@Controller('api/people')
export class PeopleController {
  constructor(@Inject(PEOPLE) private readonly people: People) {}

  @Get()
  list(): { readonly people: readonly PersonRow[] } {
    return { people: this.people.people() };
  }

  @Post()
  @HttpCode(200)
  async add(@Body() body: unknown, @Req() request: WebRequest): Promise<PersonLink> {
    const asked = checkInput(addPersonRequestSchema, body, 'BODY_MALFORMED');
    return peopleAnswer(await this.people.addPerson(asked, callerOf(request), visitorOf(request).station));
  }

  @Post(':id/change')
  @HttpCode(200)
  async change(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Promise<PersonRow> {
    const asked = checkInput(changePersonRequestSchema, body, 'BODY_MALFORMED');
    return peopleAnswer(await this.people.changePerson(id, asked, callerOf(request), visitorOf(request).station));
  }

  @Post(':id/link')
  @HttpCode(200)
  async link(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Promise<PersonLink> {
    const { reason } = checkInput(reasonRequestSchema, body, 'BODY_MALFORMED');
    return peopleAnswer(await this.people.linkFor(id, reason, callerOf(request), visitorOf(request).station));
  }
}
