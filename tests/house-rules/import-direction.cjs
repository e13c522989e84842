/**
 * Who may import whom. Every rule has a name that says it, and a planted violation in
 * import-direction/planted-violations.ts that it must refuse.
 */

/** Stages of the evaluation in the order of the data; a stage may import earlier ones only. A limit trial runs the others anew. */
const stages = [
  'slots',
  'site',
  'decode',
  'sample',
  'quality',
  'derive',
  'alarm-rules',
  'alarm-lifecycle',
  'alarm-performance',
  'forecast',
  'learnt-normal',
  'diagnosis',
  'pipeline',
  'limit-trial',
  'mapping',
];

/** Shapes that the stages hand to each other: no code, so they may be named from any stage. */
const shapes =
  '^backend/src/evaluation/(pipeline/(inputs|outputs|history-rows)|sample/acceptance|site/compiled-site|slots/[^/]+)\\.ts$';

/** A library and the rooms that alone know it. Tests may use any. */
const libraryRooms = [
  ['the-mqtt-client', 'mqtt', '^(backend/src/connections/mqtt-intake|simulator/src/publish)/'],
  ['the-embedded-broker', 'aedes', '^backend/src/connections/embedded-broker/'],
  ['the-rate-limiter', 'rate-limiter-flexible', '^backend/src/connections/rate-limits/'],
  ['the-reader-of-forwarding-headers', 'proxy-addr', '^backend/src/connections/config/'],
  ['the-time-series-client', 'influx|@duckdb/[^/]+', '^backend/src/connections/history-store/'],
  [
    'the-sql-engine',
    'libsql|kysely',
    '^backend/(src/connections/(alarm-journal|energy-sums|people)/|build/lock-data-folder)',
  ],
  ['the-password-hash', '@node-rs/argon2', '^backend/src/connections/people/'],
  ['the-password-list', '@zxcvbn-ts/[^/]+', '^backend/src/connections/people/'],
  ['the-open-id-client', 'openid-client', '^backend/src/connections/open-id/'],
  ['the-socket-server', 'socket\\.io|@nestjs/(platform-socket\\.io|websockets)', '^backend/src/connections/live-feed/'],
  ['the-socket-client', 'socket\\.io-client', '^frontend/src/feed/'],
  ['the-chart-library', 'uplot', '^frontend/src/charts/'],
  ['the-yaml-reader', 'yaml', '^(backend/src/connections/site-files|simulator/src/config)/'],
  ['nest', '@nestjs/[^/]+|rxjs', '^backend/(build|src/(connections|runner|app\\.module|main))'],
  ['vue', 'vue|vue-router|@vue/[^/]+', '^frontend/'],
];

const npm = (names) => `(^|node_modules/)(${names})(/|$)`;
const tests = '^tests/';

const forbid = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

const sharedRules = [
  forbid(
    'shared-imports-only-itself',
    'no package, no Node, no browser in shared; move it to the program that needs it',
    { path: '^shared/', pathNot: '^shared/contract/' },
    { pathNot: '^shared/' },
  ),
  forbid(
    'the-contract-imports-only-shared-and-zod',
    'shared/contract holds shapes that cross a process border; zod is its only package',
    { path: '^shared/contract/' },
    { pathNot: `^shared/|${npm('zod')}` },
  ),
];

const evaluationRules = [
  forbid(
    'evaluation-imports-only-shared-and-itself',
    'the rules of the program are pure: hand in what they need as an argument',
    { path: '^backend/src/evaluation/' },
    { pathNot: '^(shared|backend/src/evaluation)/' },
  ),
  ...stages
    .slice(0, -1)
    .map((stage, i) =>
      forbid(
        `${stage}-imports-no-later-stage`,
        'data flows one way; only pipeline composes stages',
        { path: `^backend/src/evaluation/${stage}/` },
        { path: `^backend/src/evaluation/(${stages.slice(i + 1).join('|')})/`, pathNot: shapes },
      ),
    ),
];

const backendRules = [
  forbid(
    'access-imports-only-shared-and-itself',
    'who may do what, and when a session ends, is pure: hand in what it needs as an argument',
    { path: '^backend/src/access/' },
    { pathNot: '^(shared|backend/src/access)/' },
  ),
  forbid(
    'ports-know-only-evaluation-and-shared',
    'a port is an interface; what fulfils it stands in connections',
    { path: '^backend/src/ports/' },
    { pathNot: '^(shared|backend/src/(evaluation|ports))/' },
  ),
  forbid(
    'connections-do-not-know-each-other',
    'join them in app.module, through a port',
    { path: '^backend/src/connections/([^/]+)/' },
    { path: '^backend/src/connections/', pathNot: '^backend/src/connections/$1/' },
  ),
  forbid(
    'connections-do-not-know-the-runner',
    'a connection fulfils a port; it does not call the runner',
    { path: '^backend/src/connections/' },
    { path: '^backend/src/(runner/|app\\.module|main)' },
  ),
  forbid(
    'the-runner-does-not-know-connections',
    'the runner works through ports only',
    { path: '^backend/src/runner/' },
    { path: '^backend/src/(connections/|app\\.module|main)' },
  ),
  forbid(
    'nobody-imports-main',
    'main starts the program and nothing else',
    { pathNot: tests },
    { path: '^(backend|frontend|simulator)/src/main\\.ts$' },
  ),
];

const programRules = [
  forbid(
    'backend-knows-no-other-program',
    'they meet on MQTT, socket and HTTP',
    { path: '^backend/' },
    { path: '^(frontend|simulator)/' },
  ),
  forbid(
    'frontend-knows-no-other-program',
    'they meet on socket and HTTP',
    { path: '^frontend/' },
    { path: '^(backend|simulator)/' },
  ),
  forbid(
    'the-simulator-knows-no-other-program',
    'the simulator is never the judge',
    { path: '^simulator/' },
    { path: '^(backend|frontend)/' },
  ),
  forbid(
    'the-simulator-shares-only-facts',
    'not the formulas that the judge uses, or the judge is tested with its own answers',
    { path: '^simulator/' },
    { path: '^shared/', pathNot: '^shared/(units|errors|clock|fluid-properties|contract)/' },
  ),
  forbid(
    'plant-faults-and-sensors-are-pure',
    'the plant knows no clock, no chance, no package; hand them in',
    { path: '^simulator/src/(plant|faults|sensors)/' },
    { pathNot: '^(shared|simulator/src/(plant|faults|sensors))/' },
  ),
  forbid(
    'the-plant-does-not-know-its-faults',
    'a fault changes the plant, the plant names none',
    { path: '^simulator/src/plant/' },
    { path: '^simulator/src/(faults|sensors)/' },
  ),
  forbid(
    'the-scenario-does-not-publish',
    'main joins scenario and publish',
    { path: '^simulator/src/scenario/' },
    { path: '^simulator/src/(publish/|main)' },
  ),
  forbid(
    'what-ships-does-not-know-the-tests',
    'tests look at the program, never the other way',
    { pathNot: tests },
    { path: tests },
  ),
];

const frontendRules = [
  forbid(
    'feed-and-api-know-no-other-room',
    'they speak to the server and nothing else',
    { path: '^frontend/src/(feed|api)/' },
    { path: '^frontend/src/', pathNot: '^frontend/src/$1/' },
  ),
  forbid(
    'state-does-not-know-what-shows-it',
    'screens look at state, never the other way',
    { path: '^frontend/src/state/' },
    { path: '^frontend/src/(screens|components|charts|router|App|main)' },
  ),
  forbid(
    'screens-ask-state',
    'a screen never speaks to the server by itself',
    { path: '^frontend/src/screens/' },
    { path: '^frontend/src/(feed|api)/' },
  ),
  forbid(
    'screens-do-not-know-each-other',
    'what two screens share is a component or a state',
    { path: '^frontend/src/screens/([^/]+)/' },
    { path: '^frontend/src/screens/', pathNot: '^frontend/src/screens/$1/' },
  ),
  forbid(
    'components-import-only-shared-and-text',
    'props in, events out',
    { path: '^frontend/src/components/' },
    { pathNot: `^shared/|^frontend/src/(components|text)/|${npm('vue|vue-router|@vue/[^/]+')}` },
  ),
  forbid(
    'text-imports-only-shared',
    'words and numbers know no screen',
    { path: '^frontend/src/text/' },
    { pathNot: '^(shared|frontend/src/text)/' },
  ),
  forbid(
    'charts-know-no-state',
    'columns in, picture out',
    { path: '^frontend/src/charts/' },
    { path: '^frontend/src/(feed|api|state|screens)/' },
  ),
];

const libraryRules = libraryRooms.map(([name, names, rooms]) =>
  forbid(`${name}-stays-in-its-room`, 'one library, one room', { pathNot: `${tests}|${rooms}` }, { path: npm(names) }),
);

const generalRules = [
  forbid('no-cycles', 'two files that need each other are one, or lack a third', {}, { circular: true }),
  forbid('every-import-is-found', 'the import resolves to nothing', {}, { couldNotResolve: true }),
  forbid(
    'packages-are-declared-where-they-are-used',
    'add it to dependencies of the room: npm start runs without devDependencies',
    { pathNot: tests },
    { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'npm-dev'] },
  ),
];

module.exports = {
  forbidden: [
    ...sharedRules,
    ...evaluationRules,
    ...backendRules,
    ...programRules,
    ...frontendRules,
    ...libraryRules,
    ...generalRules,
  ],
  options: {
    tsPreCompilationDeps: true,
    combinedDependencies: false,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(node_modules/\\.|dist/|data/|coverage/)' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'browser', 'types', 'default'],
      extensions: ['.ts', '.vue', '.mjs', '.cjs', '.js', '.json', '.css', '.d.ts'],
    },
  },
};
