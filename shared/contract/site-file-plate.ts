import { z } from 'zod';
import { optionalLength as length, optionalQuantity } from './site-file-quantity';

/** What a unit's plates have in common and one plate may say otherwise. */
export const chipKeys = {
  fullPower: optionalQuantity(
    'power',
    '300 W',
    'Full power of the chip: with it the temperature at full power is told.',
  ),
  chipArea: optionalQuantity('area', '8 cm2', 'Area through which the chip gives its heat to the plate.'),
};

export const plateChannelSchema = z
  .strictObject({
    wettedArea: optionalQuantity(
      'area',
      '120 cm2',
      'Wetted area of one plate, fins and all. With it, ratedFlow and wallResistance the film coefficient is told.',
    ),
    ratedFlow: optionalQuantity(
      'volumeFlow',
      '0.43 L/min',
      'Water through one plate at the rated flow of its branch. Needed.',
    ),
    wallResistance: optionalQuantity(
      'thermalResistance',
      '0.015 K/W',
      'From chip case to wetted wall. Default: plateWallResistance.',
    ),
    width: length('0.3 mm', 'Width of one channel.'),
    height: length('2 mm', 'Height of one channel.'),
    count: z.number().int().min(1).max(100_000).optional().describe('How many channels lie side by side.'),
  })
  .describe('The inside of a cold plate. Width, height and count of its channels together give the Reynolds number.');
