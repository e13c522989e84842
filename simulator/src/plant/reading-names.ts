/** True values by point id (SI, °C, pressures absolute), as perfect sensors would give them. */
export type Readings = Map<string, number>;

export const branchId = (index: number): string => `r${index + 1}`;
/** Two plates a rack: one in a server that stays whole (`a`), one in the server whose hose a fault may open (`b`). */
export const plateId = (index: number, which: 'a' | 'b'): string => `${branchId(index)}${which}`;

/** Most racks on a unit: point ids are spelt once for so many. */
const mostRacks = 64;

function pointsOf(index: number) {
  const branch = `branch.${branchId(index)}`;
  const [a, b] = [plateId(index, 'a'), plateId(index, 'b')];
  return {
    flow: `${branch}.flow`,
    returnC: `${branch}.return.temperature`,
    returnPa: `${branch}.return.pressure`,
    power: `${branch}.power`,
    isolated: `${branch}.isolated`,
    wet: `${branch}.water.found`,
    plateC: [`plate.${a}.temperature`, `plate.${b}.temperature`],
    plateW: [`plate.${a}.power`, `plate.${b}.power`],
    serverC: [`server.${a}.return.temperature`, `server.${b}.return.temperature`],
    serverW: [`server.${a}.power`, `server.${b}.power`],
    fanSpeed: [`server.${a}.fanSpeed`, `server.${b}.fanSpeed`],
  } as const;
}

export type RackPoints = ReturnType<typeof pointsOf>;

/** Point ids of each rack. */
export const rackPoints: readonly RackPoints[] = Array.from({ length: mostRacks }, (_, index) => pointsOf(index));
