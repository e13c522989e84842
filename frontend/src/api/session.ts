import type {
  ChangePasswordRequest,
  DemoSignInRequest,
  SessionState,
  SetUpRequest,
  SignInRequest,
} from '@ebbline/shared/contract/people';
import { sessionSchema } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import type { RequestFault } from './request';
import { request } from './request';

type Answer = Promise<Result<SessionState, RequestFault>>;
/** A password is hashed slowly on purpose, and few at once. ms */
const signInTimeOutMs = 20_000;
const post = (path: string, body: unknown): Answer =>
  request(`/api/session/${path}`, sessionSchema, { body, timeOutMs: signInTimeOutMs });

/** @param acts true where a person has done something since it was last asked */
export const readSession = (acts: boolean): Answer => request('/api/session', sessionSchema, { acts });

export const signIn = (wish: SignInRequest): Answer => post('sign-in', wish);

/** One click under a name, on the demo site. */
export const signInDemo = (wish: DemoSignInRequest): Answer => post('demo', wish);

export const endSession = (everywhere: boolean): Answer => post('end', { everywhere });

export const changePassword = (wish: ChangePasswordRequest): Answer => post('password', wish);

/** The first admin, or anyone by the link that an admin handed over. */
export const setUpPassword = (wish: SetUpRequest): Answer => post('set-up', wish);
