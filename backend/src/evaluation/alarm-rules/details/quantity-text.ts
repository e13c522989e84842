/** Free air (20 °C, 101.325 kPa). The word stays with the unit: a bare L/min says nothing of air. */
export const freeAirText = (m3PerS: number): string => `${(m3PerS * 60_000).toFixed(0)} free L/min`;

export const flowText = (m3PerS: number): string => `${rounded(m3PerS * 60_000)} L/min`;

export const litresText = (m3: number): string => `${rounded(m3 * 1000)} L`;

export const pressureText = (pa: number): string => `${(pa / 1000).toFixed(1)} kPa`;

/** Of a stroke or a share. Less than half a percent below nothing is nothing, and has no sign. */
export const percentText = (share: number): string => `${Math.round(share * 100) + 0} %`;

/** Two figures below ten, whole numbers above. */
const rounded = (value: number): string => (Math.abs(value) < 10 ? value.toFixed(1) : value.toFixed(0));

/** Sentences as one text; null where there is none. */
export function joined(...sentences: readonly (string | null)[]): string | null {
  const said = sentences.filter((sentence) => sentence !== null);
  return said.length === 0 ? null : said.join(' ');
}
