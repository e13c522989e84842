import { Body, Controller, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import {
  changePasswordRequestSchema,
  demoSignInRequestSchema,
  endSessionRequestSchema,
  setUpRequestSchema,
  signInRequestSchema,
  type SessionState,
} from '@ebbline/shared/contract/people';
import { ENTRANCE, type Entrance } from '../../ports/entrance';
import { OPEN_ID, type OpenId } from '../../ports/open-id';
import { PEOPLE, type BegunSession, type Caller, type People } from '../../ports/people';
import { checkInput } from './check-input';
import { peopleAnswer } from './people-problem';
import { ProblemError } from './problem-error';
import { sessionState } from './session-state';
import type { WebRequest, WebResponse } from './web-types';
import { callerOf, visitorOf } from './who-asks';

/** Who looks at the screen: sign-in, and its end. */
@Controller('api/session')
export class SessionController {
  constructor(
    @Inject(PEOPLE) private readonly people: People,
    @Inject(ENTRANCE) private readonly entrance: Entrance,
    @Inject(OPEN_ID) private readonly openId: Pick<OpenId, 'label'>,
  ) {}

  @Get()
  read(@Req() request: WebRequest): SessionState {
    return this.stateOf(visitorOf(request).caller);
  }

  @Post('sign-in')
  @HttpCode(200)
  async signIn(
    @Body() body: unknown,
    @Req() request: WebRequest,
    @Res({ passthrough: true }) response: WebResponse,
  ): Promise<SessionState> {
    const asked = checkInput(signInRequestSchema, body, 'BODY_MALFORMED');
    return this.begin(peopleAnswer(await this.people.signIn(asked, visitorOf(request).station)), request, response);
  }

  @Post('demo')
  @HttpCode(200)
  async demo(
    @Body() body: unknown,
    @Req() request: WebRequest,
    @Res({ passthrough: true }) response: WebResponse,
  ): Promise<SessionState> {
    const { name } = checkInput(demoSignInRequestSchema, body, 'BODY_MALFORMED');
    if (!this.entrance.demo)
      throw new ProblemError('DEMO_SIGN_IN_ABSENT', 'One click signs in on the demo site only, and at this machine.');
    return this.begin(peopleAnswer(await this.people.signInDemo(name, visitorOf(request).station)), request, response);
  }

  @Post('set-up')
  @HttpCode(200)
  async setUp(
    @Body() body: unknown,
    @Req() request: WebRequest,
    @Res({ passthrough: true }) response: WebResponse,
  ): Promise<SessionState> {
    const asked = checkInput(setUpRequestSchema, body, 'BODY_MALFORMED');
    return this.begin(peopleAnswer(await this.people.setUp(asked, visitorOf(request).station)), request, response);
  }

  @Post('password')
  @HttpCode(200)
  async password(
    @Body() body: unknown,
    @Req() request: WebRequest,
    @Res({ passthrough: true }) response: WebResponse,
  ): Promise<SessionState> {
    const asked = checkInput(changePasswordRequestSchema, body, 'BODY_MALFORMED');
    const { station } = visitorOf(request);
    const begun = peopleAnswer(await this.people.changePassword(callerOf(request), asked, station));
    return this.answer(begun, request, response);
  }

  @Post('end')
  @HttpCode(200)
  async end(
    @Body() body: unknown,
    @Req() request: WebRequest,
    @Res({ passthrough: true }) response: WebResponse,
  ): Promise<SessionState> {
    const { everywhere } = checkInput(endSessionRequestSchema, body, 'BODY_MALFORMED');
    peopleAnswer(await this.people.endSession(callerOf(request), everywhere, visitorOf(request).station));
    return this.answer(null, request, response);
  }

  /** Whoever was signed in with this browser before is not any more (ASVS 5.0 V7.2.4). */
  private async begin(begun: BegunSession, request: WebRequest, response: WebResponse): Promise<SessionState> {
    const { caller, station } = visitorOf(request);
    if (caller !== null && caller.csrf !== null) await this.people.endSession(caller, false, station);
    return this.answer(begun, request, response);
  }

  private answer(begun: BegunSession | null, request: WebRequest, response: WebResponse): SessionState {
    response.set('Set-Cookie', this.entrance.cookieOf(begun, request));
    return this.stateOf(begun?.caller ?? null);
  }

  private stateOf(caller: Caller | null): SessionState {
    const { demo } = this.entrance;
    return sessionState(caller, { demo, openIdLabel: this.openId.label(), setUpNeeded: this.people.setUpNeeded() });
  }
}
