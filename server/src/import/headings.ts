/** What a column is, from its heading: English, and what is common in German and French sheets. */
import { builtInAgents } from '../solutions/agents.ts';
import { isCounted, type Role } from './roles.ts';

const words: Readonly<Partial<Record<Role, readonly string[]>>> = {
  'lot': [
    'lot', 'lot no', 'lot number', 'lot id', 'seed lot', 'seedlot', 'id', 'code', 'accession', 'accession no', 'accession number',
    'acc', 'acc no', 'packet', 'packet no', 'no', 'nr', 'number', 'ref', 'label', 'nummer', 'los', 'charge', 'pot', 'akzession', 'numero',
  ],
  'batch': ['batch', 'part', 'sub batch', 'subbatch', 'group', 'dish', 'replicate', 'rep', 'teil', 'partie', 'lot part'],
  'plant': [
    'plant', 'name', 'taxon', 'plant name', 'species name', 'botanical name', 'latin name', 'scientific name', 'variety', 'what',
    'seed', 'pflanze', 'pflanzenname', 'botanischer name', 'sorte', 'plante', 'nom', 'nom latin', 'nom botanique', 'sort',
  ],
  'genus': ['genus', 'gattung', 'genre'],
  'species': ['species', 'epithet', 'art', 'espece'],
  'seeds': [
    'seeds', 'no of seeds', 'no seeds', 'number of seeds', 'seed count', 'seed number', 'quantity', 'qty', 'n', 'amount', 'how many',
    'samen', 'anzahl', 'anzahl samen', 'menge', 'stuck', 'graines', 'nombre', 'nombre de graines', 'quantite', 'semences', 'nb graines',
  ],
  'collected': [
    'collected', 'collection', 'harvest', 'harvested', 'year', 'crop year', 'seed year', 'harvest year', 'year collected', 'ernte',
    'geerntet', 'gesammelt', 'erntejahr', 'jahr', 'jahrgang', 'recolte', 'recoltees', 'annee', 'annee de recolte',
  ],
  'from': [
    'from', 'source', 'origin', 'supplier', 'donor', 'provenance', 'received from', 'got from', 'bought from', 'seed source',
    'herkunft', 'quelle', 'von', 'lieferant', 'bezugsquelle', 'origine', 'fournisseur', 'de',
  ],
  'stored': ['stored', 'storage', 'kept', 'lagerung', 'aufbewahrung', 'stockage', 'conservation'],
  'place': [
    'place', 'location', 'where', 'position', 'tray', 'shelf', 'bench', 'bag', 'box', 'ort', 'standort', 'platz', 'schale', 'lieu',
    'emplacement', 'pot no',
  ],
  'treatment': [
    'treatment', 'pretreatment', 'treated with', 'treated', 'soaked in', 'soak in', 'behandlung', 'vorbehandlung', 'traitement',
    'pretraitement',
  ],
  'soaked': ['soaked', 'soak', 'soak start', 'soaked on', 'into soak', 'eingeweicht', 'trempage', 'trempe'],
  'soak time': ['soak time', 'soak hours', 'soak length', 'soak duration', 'hours soaked', 'soaked for', 'hours', 'einweichdauer'],
  'sown': ['sown', 'sowed', 'sow', 'sowing', 'sown on', 'gesat', 'ausgesat', 'aussaat', 'saat', 'seme', 'semis', 'semee', 'seme le'],
  'seeds sown': ['seeds sown', 'no sown', 'number sown', 'qty sown', 'sown seeds', 'seeds sowed', 'ausgesate samen', 'graines semees'],
  'medium': ['medium', 'compost', 'substrate', 'mix', 'soil', 'sown in', 'substrat', 'erde', 'terreau'],
  'temperature': ['temperature', 'temp', 'temperatur', 't'],
  'chilled': [
    'chilled', 'chill', 'cold', 'cold from', 'cold start', 'into cold', 'fridge', 'in fridge', 'into fridge', 'to fridge', 'stratified',
    'stratification', 'stratification start', 'stratified from', 'kalt ab', 'kuhlschrank', 'froid', 'stratifie', 'stratifiziert',
  ],
  'cold time': ['cold time', 'weeks cold', 'days cold', 'stratification time', 'cold weeks', 'cold days', 'weeks in fridge'],
  'warmed': ['warmed', 'warm', 'warm from', 'to warm', 'into warm', 'out of fridge', 'out of cold', 'warm ab'],
  'potted': ['potted', 'potted on', 'potted up', 'pricked out', 'pricked', 'pikiert', 'getopft', 'repique', 'rempote'],
  'planted': ['planted out', 'ausgepflanzt', 'plante dehors'],
  'discarded': ['discarded', 'thrown away', 'binned', 'given up', 'entsorgt', 'jete'],
  'date': ['date', 'day', 'when', 'checked', 'checked on', 'counted', 'counted on', 'check', 'looked', 'datum', 'tag', 'kontrolle', 'jour'],
  'germinated': [
    'germinated', 'germ', 'germination', 'germs', 'count', 'counts', 'no germinated', 'number germinated', 'no germ', 'seeds germinated', 'sprouted',
    'gekeimt', 'gekeimte', 'keimlinge', 'germe', 'germes', 'germees', 'graines germees',
  ],
  'emerged': ['emerged', 'up', 'emergence', 'no up', 'came up', 'aufgelaufen', 'levee', 'levees'],
  'leaf': ['leaf', 'true leaf', 'first leaf', 'first leaves', 'true leaves', 'with leaf'],
  'rotted': ['rotted', 'rotten', 'rot', 'no rotted', 'mouldy', 'moldy', 'verfault', 'verschimmelt', 'pourri', 'pourries'],
  'died': ['died', 'seedlings died', 'damped off', 'eingegangen'],
  'lost': ['lost', 'seeds lost', 'verloren', 'perdu', 'perdues'],
  'remark': [
    'remark', 'remarks', 'note', 'notes', 'comment', 'comments', 'observations', 'observation', 'bemerkung', 'bemerkungen', 'notiz',
    'notizen', 'anmerkung', 'anmerkungen', 'remarque', 'remarques', 'commentaire', 'commentaires',
  ],
};

const byWord = new Map((Object.keys(words) as Role[]).flatMap(role => words[role]!.map(word => [word, role] as const)));

const totalWords = /\b(?:in total|total|cumulative|cum|so far|to date|sum|gesamt|kumuliert|insgesamt|cumul|cumule)\b/;
const newWords = /\b(?:new|newly|neu|neue|nouveau|nouvelles?)\b/;

export interface HeadingRead {
  readonly role: Role | undefined;
  readonly counts?: 'new' | 'total';
  /** What stands in brackets: the unit of all cells. */
  readonly unit?: string;
  readonly agent?: string;
}

/** Small letters without accents, brackets and signs. */
function plain(text: string): string {
  return text.toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '').replaceAll('ß', 'ss').replaceAll(/[#№]|n°/g, ' no ')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ').trim();
}

/** What is longer is no heading, and to look into it would take time with the square of its length. */
const LONGEST = 200;

/**
 * Reads a heading; the role is undefined where none is known.
 *
 * Example: readHeading('Total germinated') is germinated, as totals; readHeading('Temp (°C)') has the unit °C
 */
export function readHeading(heading: string): HeadingRead {
  if (heading.length > LONGEST) return { role: undefined };
  const bracket = /[([]([^)\]]*)[)\]]/.exec(heading);
  const inside = bracket?.[1]?.trim();
  const outside = plain(bracket ? heading.replace(bracket[0], ' ') : heading);
  const isDay = /^(?:date of |day of )| (?:date|on|day)$|^date (?!$)/.test(outside);
  const bare = outside.replace(/^(?:date of |day of |date )| (?:date|day|on)$/, '');
  const counts = totalWords.test(outside) ? { counts: 'total' as const } : newWords.test(outside) ? { counts: 'new' as const } : {};
  const uncounted = outside.replace(totalWords, ' ').replace(newWords, ' ').replaceAll(/ +/g, ' ').trim();
  const unit = inside ? { unit: inside } : {};
  const strength = strengthIn(heading);
  if (strength) return { role: 'strength', ...strength };
  const alone = agentNamed(heading.trim());
  if (alone !== undefined) return { role: 'treatment', agent: alone };
  const role = byWord.get(outside) ?? (isDay ? dayRole(byWord.get(bare)) : undefined) ?? byWord.get(uncounted);
  return { role: role !== undefined && isOfSeeds(role) && isPercent(heading) ? undefined : role, ...counts, ...unit };
}

function isOfSeeds(role: Role): boolean {
  return isCounted(role) || role === 'seeds' || role === 'seeds sown';
}

/** `Germinated %`, `percent up`: how many seeds that were, only somebody who counted them knows. */
function isPercent(heading: string): boolean {
  return /[%‰]|\b(?:per ?cent|percentage|pct|prozent|pour ?cent(?:age)?)\b/i.test(heading);
}

/** `Sowing date` is the day of sowing; `Germination date` is the day of something that the heading says. */
function dayRole(role: Role | undefined): Role {
  switch (role) {
    case 'soaked': case 'sown': case 'chilled': case 'warmed': case 'potted': case 'planted': case 'discarded': case 'collected': case 'date':
      return role;
    default: return 'noted';
  }
}

/** `GA3 (ppm)`, `GA3 ppm`, `KNO3 %`. */
function strengthIn(heading: string): { readonly agent: string; readonly unit: string } | undefined {
  const [, name, unit] = /^(\S+?)[ ,:]*[([]?\s*(ppm|mg\/l|g\/l|mg\/ml|mm|um|µm|%)\s*[)\]]?$/i.exec(heading) ?? [];
  const agent = name === undefined ? undefined : agentNamed(name);
  return agent === undefined ? undefined : { agent, unit: unit! };
}

/** As the journal spells it. Example: agentNamed('ga-3') is 'GA3' */
function agentNamed(text: string): string | undefined {
  const plainName = text.replaceAll('₃', '3').replace(/^GA-3$/i, 'GA3').toLowerCase();
  return [...builtInAgents.keys()].find(key => key.toLowerCase() === plainName);
}
