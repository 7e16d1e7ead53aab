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
 * Genus and species, whatever form is named behind them; a name without a species, or of a hybrid, as it stands.
 *
 * Example: speciesIn('Primula vulgaris subsp. sibthorpii') is 'Primula vulgaris'
 */
export function speciesIn(name: string): string {
  const [genus, epithet] = name.trim().split(/\s+/);
  return genus !== undefined && epithet !== undefined && EPITHET.test(epithet) ? `${genus} ${epithet}` : name;
}

/** No sign of a hybrid, no 'sp.', no name of a cultivar. */
const EPITHET = /^(?!x$)[\p{Ll}-]+$/u;

/**
 * The genus, the sign of a hybrid passed over.
 *
 * Example: genusIn('× Heucherella alba') is 'Heucherella'
 */
export function genusIn(name: string): string {
  return plainName(name).split(/\s/)[0] ?? name;
}

/** Without the sign of a hybrid genus. Example: plainName('× Heucherella alba') is 'Heucherella alba' */
export function plainName(name: string): string {
  return name.trim().replace(/^(?:×\s*|x\s+)/i, '');
}
