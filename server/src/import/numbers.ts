/** Numbers in cells: how many seeds, what was counted, and quantities with a decimal comma. */

/** `24`, `24.0`, `24,00`. Three digits behind the sign may be thousands: then nothing is read. */
export function wholeIn(cell: string): number | undefined {
  const found = /^\+?(\d{1,9})(?:[.,]0{1,2})?$/.exec(cell.replaceAll(/(?<=\d)[ '’](?=\d{3}\b)/g, ''));
  return found ? Number(found[1]) : undefined;
}

const seedWord = String.raw`(?: *(?:seeds?|samen|korn|körner|graines?|pcs?|stk|stück|x))?\.?`;
const about = new RegExp(`^(?:about|approx\\.?|approximately|around|roughly|circa|ca\\.?|c\\.|~|≈|±|etwa|ungefähr|environ|env\\.?) *(\\d{1,9})${seedWord}$`, 'i');
const between = new RegExp(`^(\\d{1,9}) *(?:-|–|to|bis|à) *(\\d{1,9})${seedWord}$`, 'i');
const doubted = /^(\d{1,9}) ?(?:\?|\(?(?:about|approx\.?|ca\.?|est\.?|estimated)\)?)$/i;
const counted = new RegExp(`^(.+?)${seedWord}$`, 'i');

/**
 * A number of seeds as a journal writes it: `40`, `about 40`, `30 to 40`. Undefined where it cannot be read.
 *
 * Example: howMany('ca. 40 seeds') is 'about 40'
 */
export function howMany(cell: string): string | undefined {
  const estimate = about.exec(cell) ?? doubted.exec(cell);
  if (estimate) return `about ${Number(estimate[1])}`;
  const range = between.exec(cell);
  if (range) return Number(range[1]) <= Number(range[2]) ? `${Number(range[1])} to ${Number(range[2])}` : undefined;
  const whole = wholeIn(counted.exec(cell)?.[1] ?? cell);
  return whole === undefined ? undefined : String(whole);
}

/** With points for decimal commas; a comma before three digits may be one of thousands, and stays. */
export function withPoints(cell: string): string {
  return cell.replaceAll(/(?<![\d.,])(\d+),(\d{1,2}|\d{4,})(?![\d.,])/g, '$1.$2');
}
