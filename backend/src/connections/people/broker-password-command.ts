import { hashPassword, usualCost } from './password-hash';

/** What MQTT clients can send and people can type; the same least length as for people. */
const SHORTEST = 12;
const LONGEST = 256;

/** What is asked for on a terminal, which then shows nothing of what is typed; or what is piped in. */
export interface PasswordInput {
  readonly isTTY?: boolean;
  setRawMode?(raw: boolean): unknown;
  setEncoding(encoding: 'utf8'): unknown;
  [Symbol.asyncIterator](): AsyncIterator<unknown>;
}

/** @returns the exit code: 0 printed, 1 refused. The password is no argument: those are seen by every user of the machine. */
export async function brokerPasswordCommand(
  input: PasswordInput,
  say: (line: string) => void,
  complain: (line: string) => void,
): Promise<number> {
  if (input.isTTY === true) complain('Password for a client of the embedded broker (it is not shown), then Enter:');
  const password = await firstLine(input);
  if (password.length < SHORTEST || password.length > LONGEST) {
    complain(`A password has ${SHORTEST} to ${LONGEST} characters; draw one, such as by: openssl rand -base64 24`);
    return 1;
  }
  say(await hashPassword(password, usualCost));
  return 0;
}

async function firstLine(input: PasswordInput): Promise<string> {
  input.setEncoding('utf8');
  input.setRawMode?.(true);
  try {
    let typed = '';
    for await (const chunk of input) {
      for (const sign of String(chunk)) {
        // Ctrl-C and Ctrl-D are ours to see while the terminal shows nothing.
        if (sign === '\u0003') return '';
        if (sign === '\r' || sign === '\n' || sign === '\u0004') return typed;
        typed = sign === '\u007f' ? typed.slice(0, -1) : typed + sign;
      }
      if (typed.length > LONGEST) return typed;
    }
    return typed;
  } finally {
    input.setRawMode?.(false);
  }
}
