/** One thing wrong with a site file, as shown to its writer. */
export interface LineFault {
  readonly line: number;
  readonly column?: number;
  /** Keys from the root, joined by dots; empty where the file as a whole is meant. */
  readonly key: string;
  /** What is expected and what to do. */
  readonly message: string;
  /** The included file, where it stands there and not in the site file itself. */
  readonly file?: string;
}

export const lineText = (siteFile: string, { file, line, column, key, message }: LineFault): string =>
  `${file ?? siteFile}:${line}${column === undefined ? '' : `:${column}`}: ${key === '' ? '' : `${key}: `}${message}`;
