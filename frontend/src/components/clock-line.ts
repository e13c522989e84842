/** One clock of what happens if the flow stopped now. */
export interface ClockLine {
  readonly id: string;
  /** s; null where that moment never comes or is not known, `words` then says which. */
  readonly seconds: number | null;
  readonly words: string;
  readonly old: boolean;
}
