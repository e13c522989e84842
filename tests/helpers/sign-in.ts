import type { SessionState, TokenRow } from '@ebbline/shared/contract/people';

/** What a request carries of who sends it. */
export type Proof = Readonly<Record<string, string>>;

/** Signs tests in at a running program, so that a test says only who acts. */
export interface SignIn {
  /** Of someone who may do all but manage people. Without a name, of a machine that reads. */
  proof(name?: string): Promise<Proof>;
  /** The same for the name that stands as `operator` in a body. */
  proofFor(body: unknown): Promise<Proof>;
  /** Headers of the admin. */
  admin(): Promise<Proof>;
  isDemo(): Promise<boolean>;
  /** What a socket sends with its handshake. */
  handshake(): Promise<Readonly<Record<string, string>>>;
  /** A cookie of the admin for a browser: name and value. */
  cookie(): Promise<{ readonly name: string; readonly value: string }>;
}

export const adminName = 'Ada of the tests';
export const testPassword = 'kettle under nine willows';
const machine = 'Desk of the tests';
const operating = ['look', 'acknowledge', 'shelve', 'permit', 'measure', 'note', 'tryLimits'];
const rights = [...operating, 'changeSite', 'commandDemo'];

const known = new Map<string, SignIn>();

/** Of a program that a helper has started. */
export function signInAt(url: string): SignIn {
  const found = known.get(new URL(url).origin);
  if (found === undefined) throw new Error(`no helper has started the program at ${url}`);
  return found;
}

/** The part of the set-up link after #, as the program printed it; null where it printed none. */
export const linkIn = (said: string): string | null =>
  /Set up the first admin \(once\): \S+#([\w-]+)/.exec(said)?.[1] ?? null;

/** @param said what the program has printed so far */
export function signIn(url: string, said: () => string): SignIn {
  const once = new Map<string, Promise<Proof>>();
  const remembered = (key: string, make: () => Promise<Proof>): Promise<Proof> => {
    const proof = once.get(key) ?? make();
    once.set(key, proof);
    proof.catch(() => once.delete(key));
    return proof;
  };
  const admin = (): Promise<Proof> =>
    remembered('admin', () => {
      const link = linkIn(said());
      const asked = { name: adminName, password: testPassword };
      return link === null
        ? beginSession(url, '/api/session/sign-in', asked)
        : beginSession(url, '/api/session/set-up', { ...asked, link });
    });
  const isDemo = async (): Promise<boolean> => (await call<SessionState>(url, '/api/session', {})).ways.demo;
  const proof = (name?: string): Promise<Proof> =>
    remembered(`name ${name ?? ''}`, async () => {
      if (!(await isDemo())) return { authorization: `Bearer ${await newToken(url, name ?? machine, await admin())}` };
      return name === undefined ? {} : beginSession(url, '/api/session/demo', { name });
    });
  const entry: SignIn = {
    proof,
    proofFor: (body) => proof(actorIn(body)),
    admin,
    isDemo,
    async handshake() {
      const { authorization } = await proof();
      return authorization === undefined ? {} : { token: authorization.replace('Bearer ', '') };
    },
    async cookie() {
      const [name = '', value = ''] = ((await admin())['cookie'] ?? '').split('=');
      return { name, value };
    },
  };
  known.set(new URL(url).origin, entry);
  return entry;
}

/** Who acts: as the body says, else the tests' own machine by a name of its own. */
function actorIn(body: unknown): string {
  const text = body instanceof Uint8Array ? new TextDecoder().decode(body) : body;
  const parsed: unknown = typeof text === 'string' ? parse(text) : text;
  const operator = typeof parsed === 'object' && parsed !== null && 'operator' in parsed ? parsed.operator : undefined;
  const name = typeof operator === 'string' ? operator.trim() : '';
  return name === '' || name.length > 80 ? 'Engineer of the tests' : name;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Signs in; cookie and CSRF header of the session. */
export async function beginSession(url: string, path: string, body: unknown): Promise<Proof> {
  const reply = await fetch(`${url}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!reply.ok) throw new Error(`POST ${path}: ${reply.status} ${await reply.text()}`);
  const { csrf } = (await reply.json()) as SessionState;
  const cookie = reply.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  return { cookie, 'x-ebbline-csrf': csrf ?? '' };
}

/** A token under a name; one of an earlier run of the program, whose secret nobody has any more, is withdrawn. */
async function newToken(url: string, name: string, admin: Proof): Promise<string> {
  const { tokens } = await call<{ tokens: readonly TokenRow[] }>(url, '/api/tokens', admin);
  const earlier = tokens.find((one) => one.name === name && one.withdrawnAt === null);
  if (earlier !== undefined) await call(url, `/api/tokens/${earlier.id}/withdraw`, admin, { reason: 'a new run' });
  return (await call<{ secret: string }>(url, '/api/tokens', admin, { name, rights, days: 1 })).secret;
}

async function call<Body>(url: string, path: string, proof: Proof, body?: unknown): Promise<Body> {
  const reply = await fetch(`${url}${path}`, {
    headers: { ...proof, ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
  });
  if (!reply.ok) throw new Error(`${path}: ${reply.status} ${await reply.text()}`);
  return (await reply.json()) as Body;
}
