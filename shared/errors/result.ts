/** An expected failure: a stable code, and a message that tells what, where and what to do. */
export interface Failure<Code extends string = string> {
  readonly code: Code;
  readonly message: string;
}

/** The outcome of something that may be refused. Expected failures are returned, never thrown. */
export type Result<Value, Fault = Failure> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly fault: Fault };

export const ok = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });

export const fail = <Fault>(fault: Fault): { readonly ok: false; readonly fault: Fault } => ({ ok: false, fault });
