import { isSource, lineCount, type ProjectFile } from './project-files';

/** A rule about one file: what is wrong with it, or null. */
export type FileRule = (file: ProjectFile) => string | null;

const mostLines = 300;

export const notTooLong: FileRule = (file) =>
  (isSource(file) || file.path.endsWith('.css')) && !file.path.endsWith('.table.ts') && lineCount(file) > mostLines
    ? `${lineCount(file)} lines`
    : null;

/** Joined so that this file does not hold the marks it looks for. */
const unfinished = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X', 'HA' + 'CK'].join('|')})\\b`);
export const finished: FileRule = ({ path, text }) =>
  path !== 'LICENSE' && unfinished.test(text) ? 'has a mark of unfinished work' : null;

const leftOut = /\b(test|it|describe)\.(skip|only|todo|fails)\b|\b[fx](it|describe)\(/;
export const nothingLeftOut: FileRule = ({ path, text }) =>
  path.endsWith('.test.ts') && leftOut.test(text) ? 'leaves a test out' : null;

const fileName = /^(?:[a-z0-9]+(?:[-.][a-z0-9]+)*\.(?:ts|mjs|cjs)|[A-Z][A-Za-z0-9]*\.vue)$/;
export const namedAfterTheHouse: FileRule = (file) => {
  const name = file.path.split('/').at(-1) ?? '';
  return isSource(file) && !fileName.test(name) ? 'is neither kebab-case nor PascalCase.vue' : null;
};

const folders = ['work', 'ho' + 'me', 'ro' + 'ot', 'Us' + 'ers', 'tmp'].join('|');
const hosts = ['registry\\.npm' + 'js', 'arti' + 'factory'].join('|');
const machine = new RegExp(`(?<![\\w.}])/(${folders})/[\\w.~$-]|(?<![\\w/])~/\\w|${hosts}`);
export const namesNoMachine: FileRule = ({ text }) => {
  const found = machine.exec(text);
  return found === null ? null : `names a place of one machine: ${found[0]}`;
};

/** Papers that stood beside the project while it was built, by name or by what they were called: a reader cannot open them. */
const papers = ['PL' + 'ANT', 'EQUA' + 'TIONS', 'ALA' + 'RMS', 'DES' + 'IGN'].join('|');
const paper = new RegExp(
  [
    `(?<![\\w-])(${papers})(?![\\w-])`,
    '\\b(STYLE|STACK)\\.md\\b',
    '\\bchecks\\.json\\b',
    "\\b([Pp]lant|[Aa]larm) reference\\b|\\bthe reference('s)?,? section \\d",
  ].join('|'),
);
export const namesNoPaper: FileRule = ({ text }) => {
  const found = paper.exec(text);
  return found === null ? null : `names a paper that is not part of the project: ${found[0]}`;
};

const title = /\b(?:test|it)(?:\.for\([^)]*\)|\.each\([^)]*\))?\(\s*(['"`])(.*?)\1/g;
export const titlesSayWhatHappens: FileRule = ({ path, text }) => {
  if (!path.endsWith('.test.ts')) return null;
  const wishes = [...text.matchAll(title)].map((match) => match[2] ?? '').filter((words) => /\bshould\b/i.test(words));
  return wishes.length > 0 ? `wishes instead of saying: ${wishes[0]}` : null;
};

export const fileRules: Readonly<Record<string, FileRule>> = {
  notTooLong,
  finished,
  nothingLeftOut,
  namedAfterTheHouse,
  namesNoMachine,
  namesNoPaper,
  titlesSayWhatHappens,
};
