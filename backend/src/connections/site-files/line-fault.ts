/** One thing wrong with a site file, as shown to its writer. */
export interface LineFault {
  readonly line: number;
  /** Keys from the root, joined by dots; empty where the file as a whole is meant. */
  readonly key: string;
  /** What is expected and what to do. */
  readonly message: string;
}

export const lineText = (file: string, { line, key, message }: LineFault): string =>
  `${file}:${line}: ${key === '' ? '' : `${key}: `}${message}`;
