/** Plants' names as growers write them. */

export const plantRanks = ['species', 'genus'] as const;
export type PlantRank = (typeof plantRanks)[number];

/**
 * The same for names that differ in case, in blanks, or in how "subspecies" is shortened only.
 *
 * Example: plantKey('Veratrum  Nigrum ssp. album') is 'veratrum nigrum subsp. album'
 */
export function plantKey(name: string): string {
  return name.trim().toLowerCase().split(/\s+/).map(word => (word === 'ssp.' ? 'subsp.' : word)).join(' ');
}

/**
 * The genus, the sign of a hybrid passed over.
 *
 * Example: genusIn('× Heucherella alba') is 'Heucherella'
 */
export function genusIn(name: string): string {
  return name.trim().replace(/^(?:×\s*|x\s+)/i, '').split(/\s/)[0] ?? name;
}
