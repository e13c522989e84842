/**
 * What a site file must say of every loop. The recorded sources are no negative-pressure units and no figure here is
 * theirs: it stands for whatever a site would write, and nothing that a test asks for depends on it.
 */
export const placeholderLoop = {
  shape: 'a',
  ratedFlow: '10 L/min',
  elevations: { supplyTankSurface: '0.5 m', returnInlet: '0.5 m' },
  nodes: {
    supply: { main: 'supply', elevation: '0 m' },
    return: { main: 'return', elevation: '0 m' },
  },
} as const;
