/** Where the pictures stand that were looked at: README shows some of them. */
export const pictureFolder = new URL('../../../frontend/pictures/', import.meta.url);

export interface KeptPicture {
  readonly name: string;
  readonly path: string;
  /** Shown once the screen has what it shows. */
  readonly shown: string;
  readonly colorScheme: 'light' | 'dark';
  readonly width: number;
  readonly height: number;
}

const both = ['light', 'dark'] as const;
const usual = { width: 1440, height: 900 };
const phone = { width: 360, height: 780 };
const strip = '[data-testid="strip-N3-bar"]';

/** What is drawn of a night in which a hose is cut and the facility water of another unit stops; and of the calm before. */
export const keptPictures: { readonly [Moment in 'calm' | 'flood']: readonly KeptPicture[] } = {
  calm: both.map((colorScheme) => ({
    ...usual,
    name: `hall-calm-${colorScheme}`,
    path: '/halls/north',
    shown: strip,
    colorScheme,
  })),
  flood: [
    ...both.flatMap((colorScheme) => [
      { ...usual, name: `hall-${colorScheme}`, path: '/halls/north', shown: strip, colorScheme },
      {
        ...usual,
        name: `loop-${colorScheme}`,
        path: '/units/N3',
        shown: '[data-testid="alarm-N3:AIR-1"]',
        colorScheme,
      },
      {
        ...usual,
        name: `alarms-${colorScheme}`,
        path: '/alarms',
        shown: '[data-testid="alarm-N3:AIR-1"]',
        colorScheme,
      },
    ]),
    { ...phone, name: 'hall-phone', path: '/halls/north', shown: strip, colorScheme: 'light' },
    {
      ...phone,
      name: 'loop-phone',
      path: '/units/N3',
      shown: '[data-testid="alarm-N3:AIR-1"]',
      colorScheme: 'dark',
    },
  ],
};
