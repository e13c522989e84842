export interface UntilOptions {
  /** Gives up after so long, ms; 90 s where nothing is said. A bound against hanging, never a measure. */
  readonly withinMs?: number;
  /** Pause between two looks, ms. */
  readonly everyMs?: number;
  /** What is waited for, for the message. */
  readonly what?: string;
}

type Condition<Value> = () => Value | Promise<Value>;

/**
 * Waits until `condition` gives something truthy and returns it. Ends on the condition, not on a time;
 * what it throws meanwhile counts as "not yet" and is told at the end.
 */
export async function until<Value>(
  condition: Condition<Value>,
  options: UntilOptions = {},
): Promise<NonNullable<Value>> {
  const deadline = performance.now() + (options.withinMs ?? 90_000);
  let last: unknown = 'the condition was never true';
  for (;;) {
    try {
      const value = await condition();
      if (value) return value;
    } catch (fault) {
      last = fault;
    }
    if (performance.now() > deadline) {
      throw new Error(`waited in vain for ${options.what ?? condition.toString()}`, { cause: last });
    }
    await new Promise((resolve) => setTimeout(resolve, options.everyMs ?? 5));
  }
}
