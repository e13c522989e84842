import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req } from '@nestjs/common';
import { handOverRequestSchema, takeOverRequestSchema, type Handover } from '@ebbline/shared/contract/handover';
import {
  noteCorrectionRequestSchema,
  noteRequestSchema,
  notesQuerySchema,
  noteWithdrawalRequestSchema,
  type Note,
  type NoteList,
} from '@ebbline/shared/contract/notes';
import type { Result } from '@ebbline/shared/errors/result';
import { IDENTITY, type Identity } from '../../ports/identity';
import { NOTE_DESK, type NoteDesk, type NoteDeskFault } from '../../ports/note-desk';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** What people write down of the plant, and shifts handed over and taken over. */
@Controller('api')
export class NotesController {
  constructor(
    @Inject(NOTE_DESK) private readonly desk: NoteDesk,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get('notes')
  list(@Query() query: unknown): NoteList {
    const { from, to, hall = null, unit = null } = checkInput(notesQuerySchema, query, 'QUERY_MALFORMED');
    const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
    if (!(toMs > fromMs))
      throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
    return orProblem(this.desk.notes({ fromMs, toMs, hall, unit }));
  }

  @Post('notes')
  @HttpCode(200)
  write(@Body() body: unknown, @Req() request: WebRequest): Note {
    const asked = checkInput(noteRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.write(asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('notes/:id/correct')
  @HttpCode(200)
  correct(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Note {
    const asked = checkInput(noteCorrectionRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.correct(id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('notes/:id/withdraw')
  @HttpCode(200)
  withdraw(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Note {
    const asked = checkInput(noteWithdrawalRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.withdraw(id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('handovers')
  @HttpCode(200)
  handOver(@Body() body: unknown, @Req() request: WebRequest): Handover {
    const asked = checkInput(handOverRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.handOver(asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('handovers/:id/take')
  @HttpCode(200)
  takeOver(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Handover {
    const asked = checkInput(takeOverRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.takeOver(id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem<Value>(done: Result<Value, NoteDeskFault>): Value {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
