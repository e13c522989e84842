import { readRows, told, utcMs, type Row } from '../player/read-rows';

/** A node of the computer hall under a name of its own, and the enclosure through which its telemetry comes. */
export interface FleetNode {
  readonly id: string;
  readonly gateway: string;
  /** Columns that its source fills at all. */
  readonly fitted: readonly string[];
}

export interface FleetReading {
  readonly node: FleetNode;
  readonly atMs: number;
  readonly cells: Readonly<Record<string, number | string>>;
}

export interface Fleet {
  readonly nodes: readonly FleetNode[];
  /** In the order of time. */
  readonly readings: readonly FleetReading[];
}

/** Column → point of the site file. The air beside a node has no point of a unit and is left out. */
export const pointOfColumn: Readonly<Record<string, string>> = {
  inlet_water_c: 'supply.temperature',
  chassis_w: 'unit.power',
  psu_w: 'branch.node.power',
  sys_w: 'plate.board.power',
  drip1: 'water.found',
  drip2: 'tray.water.found',
};

const columns = Object.keys(pointOfColumn);
const two = (number: number, digits: number): string => String(number).padStart(digits, '0');

/**
 * Reads the day and gives names of our own: nodes are numbered in the order of their names; nodes whose names agree
 * but for the last two digits share an enclosure, and that is their gateway here.
 */
export function readFleet(file: string): Fleet {
  const rows = readRows(file);
  const names = [...new Set(rows.map(({ node = '' }) => node))].sort();
  const enclosures = [...new Set(names.map((name) => name.slice(0, -2)))];
  const fitted = new Map(names.map((name) => [name, new Set<string>()]));
  for (const row of rows) for (const name of columns) if (row[name] !== '') fitted.get(row['node'] ?? '')?.add(name);
  const nodes = new Map(
    names.map((name, i): [string, FleetNode] => [
      name,
      {
        id: `node-${two(i + 1, 3)}`,
        gateway: `enclosure-${two(enclosures.indexOf(name.slice(0, -2)) + 1, 2)}`,
        fitted: columns.filter((column) => fitted.get(name)?.has(column)),
      },
    ]),
  );
  const readings = rows.map((row) => toReading(row, nodes.get(row['node'] ?? '') as FleetNode));
  return { nodes: [...nodes.values()], readings: readings.sort((a, b) => a.atMs - b.atMs) };
}

const toReading = (row: Row, node: FleetNode): FleetReading => ({
  node,
  atMs: utcMs(row['timestamp'] ?? ''),
  // An empty cell is a sensor that is not fitted; `NR` is one that gave no reading, and is told as it stands.
  cells: Object.fromEntries(
    node.fitted.filter((name) => row[name] !== '').map((name) => [name, told(row[name] ?? '')]),
  ),
});
