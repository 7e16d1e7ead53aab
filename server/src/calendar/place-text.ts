/** Places as the grower writes them, and when two texts mean the same one. */

export interface Slot {
  /** What the slot is in, as written; empty where only the slot is named. */
  readonly container: string;
  /** As written. */
  readonly slot: string;
}

/**
 * A place that names a slot, taken apart; undefined for any other text.
 *
 * Example: slotOf('Bag 3 slot 2') is { container: 'Bag 3', slot: '2' }; slotOf('fridge') is undefined
 */
export function slotOf(place: string): Slot | undefined {
  const match = /^(?:(.*?\S)\s+)?slot\s*(\S+)$/iu.exec(place.trim());
  return match ? { container: match[1] ?? '', slot: match[2]! } : undefined;
}

/**
 * The same for two texts that mean the same place: case and blanks make no difference, except between two numbers, and
 * neither do zeros in front of a slot's number. A bag or a jar that has a number is the same wherever it is put.
 *
 * Example: placeKey('bag 3 slot 02') is placeKey('Bag3 Slot 2') and placeKey('fridge bag 3 slot 2')
 */
export function placeKey(place: string): string {
  return slotKeyOf(place) ?? plain(place);
}

/** The key of a place that names a slot; undefined for any other text. */
export function slotKeyOf(place: string): string | undefined {
  const slot = slotOf(place);
  return slot && slotKey(slot);
}

/** Every such key holds a blank, and so is no id. */
function slotKey({ container, slot }: Slot): string {
  return `${plain(container)} slot ${slot.toLowerCase().replace(/^0+(?=\d)/, '')}`;
}

/** What is carried about and known by its number; a shelf or a tray is one of its room. */
const carried = /(?:^|\s)((?:bag|jar|bottle|envelope|packet|sachet|tube|vial)\s*(?:no\.?\s*)?\p{L}?\d+\p{L}?)(?=$|[,()]|\s(?!\s*\d))/giu;

function plain(text: string): string {
  const last = [...text.matchAll(carried)].at(-1)?.[1] ?? text;
  return last.trim().toLowerCase().replace(/(\d)\s+(?=\d)/g, '$1_').replace(/\s+/g, '');
}
