import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';
import type { Choice, ScenarioKind } from './catalogue/scenario-kind';

export type CommandRefusal = Failure<'COMMAND_SHAPE' | 'COMMAND_UNIT' | 'COMMAND_BRANCH'>;

/** One command, every key filled in. */
export interface Command {
  readonly what: ScenarioKind;
  /** A unit's id, or the whole site's word. */
  readonly unit: string;
  /** Index of the branch; −1 where it needs none. */
  readonly branch: number;
  readonly action: 'start' | 'repair';
  readonly keys: Readonly<Record<string, string>>;
}

/** What a command may speak of. */
export interface Commandable {
  readonly kinds: readonly ScenarioKind[];
  readonly units: readonly { readonly id: string; readonly branches: readonly string[] }[];
}

type Fields = Readonly<Record<string, unknown>>;

/**
 * Reads one command; every refusal says what to send instead. Two forms mean the same:
 * `{"fault":"loadStep","unit":"N3","size":"small"}` (or `operation`), as people write it, and
 * `{"kind":"fault","id":"loadStep","unit":"N3","keys":{"size":"small"}}`, as a screen sends it. A `request` is the
 * sender's own mark.
 */
export function readCommand(text: string, there: Commandable): Result<Command, CommandRefusal> {
  const sent = asObject(text);
  if (sent === null)
    return shape('expected one JSON object such as {"fault":"slowInLeak","unit":"N3","action":"start"}');
  const fields = flat(sent);
  const kind = fields['fault'] !== undefined ? 'fault' : 'operation';
  const offered = there.kinds.filter((candidate) => candidate.kind === kind);
  const what = offered.find(({ id }) => id === fields[kind]);
  if (!what || (fields['fault'] !== undefined && fields['operation'] !== undefined))
    return shape(`fault or operation, one of them: ${kind} can be ${offered.map(({ id }) => id).join(', ')}`);
  const known = [kind, 'unit', 'branch', 'action', ...what.choices.map(({ key }) => key)];
  const strange = Object.keys(fields).filter((key) => !known.includes(key));
  if (strange.length > 0) return shape(`unknown key ${strange[0]}; ${what.id} has ${known.join(', ')}`);

  const unit = what.units.find((id) => id === fields['unit']);
  if (unit === undefined)
    return fail({ code: 'COMMAND_UNIT', message: `no such unit; ${what.id} is for ${what.units.join(', ')}` });
  const action = pick(fields, { key: 'action', title: '', values: ['start', 'repair'], usual: 'start' });
  if (!action.ok) return action;
  const branches = there.units.find(({ id }) => id === unit)?.branches ?? [];
  const branch = what.needsBranch ? branches.findIndex((id) => id === fields['branch']) : -1;
  if (what.needsBranch && branch < 0) {
    return fail({ code: 'COMMAND_BRANCH', message: `${what.id} needs a branch of ${unit}: ${branches.join(', ')}` });
  }
  const keys: Record<string, string> = {};
  for (const choice of what.choices) {
    const value = pick(fields, choice);
    if (!value.ok) return value;
    keys[choice.key] = value.value;
  }
  return ok({ what, unit, branch, action: action.value === 'repair' ? 'repair' : 'start', keys });
}

/** Every kind has its own keys; what a screen puts in `keys` stands beside the rest, and an empty branch is none. */
function flat(sent: Fields): Fields {
  const { kind, id, keys, ...own } = Object.fromEntries(
    Object.entries(sent).filter(([key, value]) => key !== 'request' && !(key === 'branch' && value === null)),
  );
  if (kind === undefined && id === undefined && keys === undefined) return own;
  return { ...own, ...(isObject(keys) ? keys : {}), [String(kind)]: id };
}

/** The sender's own mark on a command, echoed in the answer; null where it set none. */
export function requestOf(text: string): string | null {
  const request = asObject(text)?.['request'];
  return typeof request === 'string' ? request.slice(0, longestRequest) : null;
}

const longestRequest = 200;

const shape = (message: string): Result<never, CommandRefusal> => fail({ code: 'COMMAND_SHAPE', message });

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function asObject(text: string): Fields | null {
  try {
    const value: unknown = JSON.parse(text);
    return isObject(value) ? value : null;
  } catch {
    return null; // not JSON: refused by the caller with an example
  }
}

function pick(fields: Fields, choice: Choice): Result<string, CommandRefusal> {
  const given = fields[choice.key] ?? choice.usual;
  const word = typeof given === 'number' ? String(given) : given;
  const { values } = choice;
  if (typeof word === 'string' && (values.includes(word) || (choice.anyNumber && isBetween(word, values))))
    return ok(word);
  const expected = choice.anyNumber ? `a number from ${values[0]} to ${values.at(-1)}` : `one of ${values.join(', ')}`;
  return shape(`${choice.key}: expected ${expected}`);
}

function isBetween(word: string, values: readonly string[]): boolean {
  const number = word.trim() === '' ? Number.NaN : Number(word);
  return number >= Number(values[0]) && number <= Number(values.at(-1));
}
