/** One line that breaks one rule: in `file` stands an import of `specifier`. */
export interface Planted {
  readonly rule: string;
  readonly file: string;
  readonly specifier: string;
}

const plant = (rule: string, file: string, specifier: string): Planted => ({ rule, file, specifier });

const evaluation = 'backend/src/evaluation';

const laterStage: readonly (readonly [stage: string, later: string])[] = [
  ['slots', 'site'],
  ['site', 'decode'],
  ['decode', 'sample'],
  ['sample', 'quality'],
  ['quality', 'derive'],
  ['derive', 'alarm-rules'],
  ['alarm-rules', 'alarm-lifecycle'],
  ['alarm-lifecycle', 'pipeline'],
  ['alarm-performance', 'limit-trial'],
  ['forecast', 'diagnosis'],
  ['learnt-normal', 'diagnosis'],
  ['diagnosis', 'pipeline'],
  ['pipeline', 'limit-trial'],
  ['limit-trial', 'mapping'],
];

/** Every rule at least once; the test plants them one by one in an otherwise clean tree. */
export const plantedViolations: readonly Planted[] = [
  plant('shared-imports-only-itself', 'shared/heat/a.ts', 'zod'),
  plant('shared-imports-only-itself', 'shared/units/a.ts', 'node:fs'),
  plant('shared-imports-only-itself', 'shared/hydraulics/a.ts', '../../backend/src/ports/clock'),
  plant('the-contract-imports-only-shared-and-zod', 'shared/contract/a.ts', 'mqtt'),
  plant('the-contract-imports-only-shared-and-zod', 'shared/contract/a.ts', 'node:path'),
  plant('evaluation-imports-only-shared-and-itself', `${evaluation}/derive/a.ts`, 'node:fs'),
  plant('evaluation-imports-only-shared-and-itself', `${evaluation}/decode/a.ts`, 'zod'),
  plant('evaluation-imports-only-shared-and-itself', `${evaluation}/pipeline/a.ts`, '../../ports/clock'),
  ...laterStage.map(([stage, later]) =>
    plant(`${stage}-imports-no-later-stage`, `${evaluation}/${stage}/a.ts`, `../${later}/stage`),
  ),
  plant('access-imports-only-shared-and-itself', 'backend/src/access/a.ts', 'node:crypto'),
  plant('access-imports-only-shared-and-itself', 'backend/src/access/a.ts', '../ports/clock'),
  plant('ports-know-only-evaluation-and-shared', 'backend/src/ports/a.ts', 'rxjs'),
  plant('ports-know-only-evaluation-and-shared', 'backend/src/ports/a.ts', '../runner/runner'),
  plant('connections-do-not-know-each-other', 'backend/src/connections/http-api/a.ts', '../health/room'),
  plant('connections-do-not-know-the-runner', 'backend/src/connections/health/a.ts', '../../runner/runner'),
  plant('the-runner-does-not-know-connections', 'backend/src/runner/a.ts', '../connections/health/room'),
  plant('nobody-imports-main', 'backend/src/runner/a.ts', '../main'),
  plant('backend-knows-no-other-program', 'backend/src/runner/a.ts', '../../../simulator/src/plant/plant'),
  plant('backend-knows-no-other-program', 'backend/src/runner/a.ts', '../../../frontend/src/text/words'),
  plant('frontend-knows-no-other-program', 'frontend/src/text/a.ts', '../../../backend/src/ports/clock'),
  plant('the-simulator-knows-no-other-program', 'simulator/src/scenario/a.ts', `../../../${evaluation}/derive/stage`),
  plant('the-simulator-shares-only-facts', 'simulator/src/plant/a.ts', '@ebbline/shared/hydraulics/loss'),
  plant('the-simulator-shares-only-facts', 'simulator/src/plant/a.ts', '@ebbline/shared/heat/balance'),
  plant('plant-faults-and-sensors-are-pure', 'simulator/src/sensors/a.ts', 'node:crypto'),
  plant('plant-faults-and-sensors-are-pure', 'simulator/src/plant/a.ts', '../scenario/scenario'),
  plant('the-plant-does-not-know-its-faults', 'simulator/src/plant/a.ts', '../faults/fault'),
  plant('the-scenario-does-not-publish', 'simulator/src/scenario/a.ts', '../publish/publish'),
  plant('what-ships-does-not-know-the-tests', 'frontend/src/state/a.ts', '../../../tests/helpers/helper'),
  plant('feed-and-api-know-no-other-room', 'frontend/src/feed/a.ts', '../api/request'),
  plant('feed-and-api-know-no-other-room', 'frontend/src/api/a.ts', '../state/state'),
  plant('state-does-not-know-what-shows-it', 'frontend/src/state/a.ts', '../screens/hall/hall'),
  plant('screens-ask-state', 'frontend/src/screens/hall/a.ts', '../../api/request'),
  plant('screens-do-not-know-each-other', 'frontend/src/screens/hall/a.ts', '../loop/loop'),
  plant('components-import-only-shared-and-text', 'frontend/src/components/Planted.vue', '../state/state'),
  plant('components-import-only-shared-and-text', 'frontend/src/components/a.ts', 'zod'),
  plant('text-imports-only-shared', 'frontend/src/text/a.ts', '../components/Quiet.vue'),
  plant('charts-know-no-state', 'frontend/src/charts/a.ts', '../state/state'),
  plant('the-mqtt-client-stays-in-its-room', 'backend/src/connections/health/a.ts', 'mqtt'),
  plant('the-embedded-broker-stays-in-its-room', 'backend/src/connections/mqtt-intake/a.ts', 'aedes'),
  plant('the-rate-limiter-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'rate-limiter-flexible'),
  plant('the-reader-of-forwarding-headers-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'proxy-addr'),
  plant('the-time-series-client-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'influx'),
  plant('the-time-series-client-stays-in-its-room', 'backend/src/runner/a.ts', '@duckdb/node-api'),
  plant('the-sql-engine-stays-in-its-room', 'backend/src/connections/history-store/a.ts', 'libsql'),
  plant('the-open-id-client-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'openid-client'),
  plant('the-password-hash-stays-in-its-room', 'backend/src/connections/http-api/a.ts', '@node-rs/argon2'),
  plant('the-password-list-stays-in-its-room', 'backend/src/main/a.ts', '@zxcvbn-ts/core'),
  plant('the-socket-server-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'socket.io'),
  plant('the-socket-client-stays-in-its-room', 'frontend/src/state/a.ts', 'socket.io-client'),
  plant('the-chart-library-stays-in-its-room', 'frontend/src/screens/loop/a.ts', 'uplot'),
  plant('the-yaml-reader-stays-in-its-room', 'backend/src/connections/config/a.ts', 'yaml'),
  plant('nest-stays-in-its-room', 'simulator/src/publish/a.ts', '@nestjs/common'),
  plant('vue-stays-in-its-room', 'backend/src/connections/http-api/a.ts', 'vue'),
  plant('no-cycles', `${evaluation}/derive/stage.ts`, './circle'),
  plant('every-import-is-found', 'frontend/src/api/a.ts', './nowhere'),
  plant('packages-are-declared-where-they-are-used', 'frontend/src/api/a.ts', 'undeclared'),
  plant('packages-are-declared-where-they-are-used', 'backend/src/connections/health/a.ts', 'only-for-development'),
];
