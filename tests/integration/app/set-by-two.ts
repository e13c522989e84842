import type { SettingChange } from '@ebbline/shared/contract/alarm-list';
import type { PersonLink } from '@ebbline/shared/contract/people';
import { adminName, beginSession, testPassword, type Proof } from '../../helpers/sign-in';
import { postJson, type RunningApp } from './running-app';

export interface Person {
  readonly name: string;
  readonly proof: Proof;
}

/** Signs someone in who was added by the admin. */
export async function personWith(app: RunningApp, role: string, name: string): Promise<Person> {
  const headers = { ...(await app.signIn.admin()), 'content-type': 'application/json' };
  const added = await fetch(`${app.url}/api/people`, { ...postJson({ name, role }), headers });
  const { link } = (await added.json()) as PersonLink;
  const asked = { link: link.split('#')[1], password: testPassword };
  return { name, proof: await beginSession(app.url, '/api/session/set-up', asked) };
}

export const adminOf = async (app: RunningApp): Promise<Person> => ({
  name: adminName,
  proof: await app.signIn.admin(),
});

export interface Answer {
  readonly status: number;
  readonly body: unknown;
}

async function post(app: RunningApp, path: string, { name, proof }: Person, asked: object): Promise<Answer> {
  const headers = { ...proof, 'content-type': 'application/json' };
  const reply = await fetch(`${app.url}${path}`, { ...postJson({ operator: name, ...asked }), headers });
  return { status: reply.status, body: await reply.json() };
}

export const askForChange = (app: RunningApp, as: Person, asked: object): Promise<Answer> =>
  post(app, '/api/alarm-list/changes', as, asked);

export const decide = (app: RunningApp, as: Person, id: string, decision: 'approve' | 'withdraw'): Promise<Answer> =>
  post(app, `/api/alarm-list/proposals/${id}`, as, { decision });

/** Asked for by one and approved by another; what the change came to, or the refusal of the first. */
export async function setByTwo(app: RunningApp, asker: Person, second: Person, asked: object): Promise<Answer> {
  const held = await askForChange(app, asker, { link: 'order 17', ...asked });
  return held.status === 200 ? decide(app, second, (held.body as SettingChange).id, 'approve') : held;
}
