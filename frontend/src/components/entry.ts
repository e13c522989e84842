import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Right, SessionState } from '@ebbline/shared/contract/people';
import type { InjectionKey, Ref } from 'vue';
import { inject } from 'vue';

/** What came of a wish to come in. */
export type EntryAnswer =
  | { readonly ok: true }
  | { readonly ok: false; readonly code: string; readonly text: string; readonly waitSeconds: number | null };

/** Who is signed in, and the ways to be; given by the frame of the page. */
export interface Entry {
  readonly session: Readonly<Ref<SessionState | null>>;
  /** The name last used on this device; a convenience, no proof. */
  rememberedName(): string;
  byName(name: string): Promise<EntryAnswer>;
  byPassword(name: string, password: string): Promise<EntryAnswer>;
}

export const entryKey: InjectionKey<Entry> = Symbol('entry');

export function useEntry(): Entry {
  const entry = inject(entryKey, null);
  if (entry === null) throw new CodedError('NO_ENTRY', 'nobody said who is signed in; provide it under entryKey');
  return entry;
}

/** Under which name this page may do something; null where it may not. */
export function nameFor(session: SessionState | null, right: Right): string | null {
  const person = session?.person ?? null;
  return person !== null && person.rights.includes(right) ? person.name : null;
}
