import { dirname, join } from 'node:path';
import ts from 'typescript';

/** What the compiler says about `code` if it stood in the room of `configPath`; nothing is written. */
export function checkPlanted(configPath: string, code: string): string[] {
  const planted = join(dirname(configPath), 'planted.ts');
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(configPath, (path) => ts.sys.readFile(path)).config,
    ts.sys,
    dirname(configPath),
  );
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.getSourceFile = (name, ...rest) =>
    name === planted
      ? ts.createSourceFile(name, code, ts.ScriptTarget.ES2022)
      : getSourceFile.call(host, name, ...rest);
  host.fileExists = (name) => name === planted || fileExists.call(host, name);
  host.readFile = (name) => (name === planted ? code : readFile.call(host, name));
  const program = ts.createProgram([planted], options, host);
  return ts.getPreEmitDiagnostics(program).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}
