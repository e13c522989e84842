import type { PointRow, QuantityKind } from './quantity-kind';

/**
 * What the water of a loop is looked after by. `water.<id>` is a sensor's point, `water.<id>.hand` what a person typed: the
 * two are never mixed. A concentration of a salt says as what it is counted: in the title.
 */
export const waterParameterIds = [
  'conductivity',
  'ph',
  'turbidity',
  'inhibitor',
  'molybdate',
  'nitrite',
  'azole',
  'copper',
  'iron',
  'chloride',
  'sulfate',
  'sulfide',
  'hardness',
  'residue',
  'glycol',
  'bacteria',
] as const;
export type WaterParameterId = (typeof waterParameterIds)[number];

export interface WaterParameter {
  readonly title: string;
  readonly quantity: QuantityKind;
  /** UCUM code of every value in the program, the interface and history. */
  readonly unit: string;
  /** What a typed value must lie between, in `unit`: outside it is a slip of the pen or of the unit of measure. Own rule. */
  readonly least: number;
  readonly most: number;
}

/** Up to 100 g/L. */
const concentration = (title: string): WaterParameter => ({
  title,
  quantity: 'concentration',
  unit: 'kg/m3',
  least: 0,
  most: 100,
});

export const waterParameters: Readonly<Record<WaterParameterId, WaterParameter>> = {
  conductivity: { title: 'Conductivity at 25 °C', quantity: 'conductivity', unit: 'S/m', least: 0, most: 20 },
  ph: { title: 'pH', quantity: 'ph', unit: '1', least: 0, most: 14 },
  turbidity: { title: 'Turbidity', quantity: 'turbidity', unit: '{NTU}', least: 0, most: 10_000 },
  inhibitor: concentration('Inhibitor'),
  molybdate: concentration('Molybdate, as Mo'),
  nitrite: concentration('Nitrite, as NO₂'),
  azole: concentration('Azole'),
  copper: concentration('Copper'),
  iron: concentration('Iron'),
  chloride: concentration('Chloride'),
  sulfate: concentration('Sulfate'),
  sulfide: concentration('Sulfide'),
  hardness: concentration('Hardness, as CaCO₃'),
  residue: concentration('Residue on evaporation'),
  glycol: { title: 'Glycol, by volume', quantity: 'ratio', unit: '1', least: 0, most: 1 },
  bacteria: { title: 'Bacteria', quantity: 'bacteria', unit: '{CFU}/mL', least: 0, most: 1e10 },
};

export const handPoint = (parameter: WaterParameterId): string => `water.${parameter}.hand`;

export const isWaterParameter = (id: string): id is WaterParameterId => Object.hasOwn(waterParameters, id);

/** `water.<parameter>.hand` for the point table. */
export const handPoints: readonly PointRow[] = waterParameterIds.map((id) => {
  const { title, quantity, unit } = waterParameters[id];
  return [handPoint(id), quantity, unit, `${title}, by hand`];
});
