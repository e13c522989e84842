import { launchInfluxd, type TestInflux } from './launch-influxd';
import { pathOf } from './requirements';

export type { TestInflux } from './launch-influxd';

/** A real InfluxDB 1.x of a test. Needs 'influxdb'. */
export const startInfluxd = (): Promise<TestInflux> => launchInfluxd(pathOf('influxdb'));
