import type { SettingLayers } from '../evaluation/site/setting-layers';

/** The list of alarms as people have authorised it, apart from what runs. */
export interface AuthorisedList {
  /** Name of the file. */
  readonly file: string;
  readonly version: string;
  readonly approvedBy: string;
  /** YYYY-MM-DD. */
  readonly approvedOn: string;
  readonly layers: SettingLayers;
  readonly entries: ReadonlyMap<string, AuthorisedEntry>;
}

export interface AuthorisedEntry {
  readonly owner?: string | undefined;
  /** YYYY-MM-DD. */
  readonly reviewBy?: string | undefined;
  readonly changeLink?: string | undefined;
}

/** Which authorised list is in force; a newer content of the file takes its place, or is refused whole. */
export interface AuthorisedListInForce {
  /** Null: catalogue and site file are the list. */
  list(): AuthorisedList | null;
  /** What is wrong with a newer content, by line and column; empty: nothing. */
  refused(): readonly string[];
}

export const noAuthorisedList: AuthorisedListInForce = { list: () => null, refused: () => [] };
