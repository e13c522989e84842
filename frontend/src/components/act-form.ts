/** What every form of an action is given from outside. */
export interface Acted {
  /** Under whose name it is sent; null where nobody may. */
  readonly who: string | null;
  /** Sent, and not answered yet. */
  readonly busy: boolean;
  /** Why the server refused; null where it did not. */
  readonly problem: string | null;
}
