import { Body, Controller, Get, HttpCode, Inject, Post, Query, Req } from '@nestjs/common';
import {
  listenRequestSchema,
  mappingQuerySchema,
  stopListeningRequestSchema,
  tryLinesRequestSchema,
  type Mapping,
  type TriedLines,
} from '@ebbline/shared/contract/mapping';
import { IDENTITY, type Identity } from '../../ports/identity';
import { MAPPING_DESK, type MappingDesk } from '../../ports/mapping-desk';
import { SITE_CHECKER, type SiteChecker } from '../../ports/site-check';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Help with a plant whose gateways have names of their own. */
@Controller('api/mapping')
export class MappingController {
  constructor(
    @Inject(MAPPING_DESK) private readonly desk: MappingDesk,
    @Inject(SITE_CHECKER) private readonly checker: SiteChecker,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  async mapping(@Query() query: unknown): Promise<Mapping> {
    const { unit = null } = checkInput(mappingQuerySchema, query, 'QUERY_MALFORMED');
    const done = await this.desk.mapping(unit);
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
    return done.value;
  }

  @Post('listen')
  @HttpCode(200)
  listen(@Body() body: unknown, @Req() request: WebRequest): Promise<Mapping> {
    const { filter } = checkInput(listenRequestSchema, body, 'BODY_MALFORMED');
    const begun = this.desk.listen(filter, actorOf(this.identity, request));
    if (!begun.ok) throw new ProblemError(begun.fault.code, begun.fault.message);
    return this.mapping({});
  }

  @Post('stop')
  @HttpCode(200)
  async stop(@Body() body: unknown): Promise<Mapping> {
    checkInput(stopListeningRequestSchema, body, 'BODY_MALFORMED');
    await this.desk.stop();
    return this.mapping({});
  }

  @Post('try')
  @HttpCode(200)
  async try(@Body() body: unknown): Promise<TriedLines> {
    const { lines } = checkInput(tryLinesRequestSchema, body, 'BODY_MALFORMED');
    const tried = await this.checker.tryLines(lines);
    if (!tried.ok) throw new ProblemError(tried.fault.code, tried.fault.message);
    return tried.value;
  }
}
