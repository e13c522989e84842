/** Rooms that know no clock, no chance, no I/O: time and randomness are arguments. */
export const pureRooms = [
  'shared/**/*.ts',
  'backend/src/evaluation/**/*.ts',
  'backend/src/access/**/*.ts',
  'simulator/src/{plant,faults,sensors}/**/*.ts',
];

const handedIn = 'pure rooms have no clock, no chance and no I/O: take it as an argument';

const globals = [
  'Date',
  'console',
  'process',
  'performance',
  'crypto',
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'clearTimeout',
  'clearInterval',
  'queueMicrotask',
  'Buffer',
  'globalThis',
  'window',
  'document',
];

export const pureRoomRules = {
  files: pureRooms,
  rules: {
    'no-restricted-globals': ['error', ...globals.map((name) => ({ name, message: handedIn }))],
    'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: handedIn }],
    'no-restricted-syntax': [
      'error',
      { selector: 'AwaitExpression', message: 'a pure step waits for nothing' },
      { selector: 'ImportExpression', message: 'a pure step loads nothing' },
      { selector: 'ExportDefaultDeclaration', message: 'named exports only' },
    ],
  },
};
