/** The one error class. Thrown for mistakes of a programmer or a broken machine; expected failures are returned (`result.ts`). */
export class CodedError extends Error {
  constructor(
    readonly code: string,
    message: string,
    options?: { cause?: unknown },
  ) {
    super(`${code}: ${message}`, options);
    this.name = 'CodedError';
  }
}
