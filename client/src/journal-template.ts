/** What a new journal begins with, and the name of its file: plain text, apart from the editor. */

const pad = (n: number) => String(n).padStart(2, '0');

/** The winter that a month belongs to; a growers' year turns in summer. */
function winterOf(year: number, month: number): [number, number] {
  return month >= 7 ? [year, year + 1] : [year - 1, year];
}

/** Example: winterName(2026, 11) is '2026-27.germ' */
export function winterName(year: number, month: number): string {
  const [first, second] = winterOf(year, month);
  return `${first}-${pad(second % 100)}.germ`;
}

/**
 * The heading of a winter. With a zone, that of the machine's clock, also what holds for the journal as a whole: it is
 * the first of its files.
 */
export function journalHead(year: number, month: number, zone: string | undefined): string {
  const [first, second] = winterOf(year, month);
  const settings = zone === undefined ? '' : `zone ${zone}\nlimit soak, 24 h\nlimit GA3, 1000 ppm\n`;
  return `# Winter ${first}/${pad(second % 100)}\n${settings}\n`;
}

/** The first lot, to be filled in, as a snippet of the editor; it ends below the `day` line of today. */
export function firstLot(year: number, month: number, date: number): string {
  const [collected] = winterOf(year, month);
  return `lot \${1:LOT-1} \${2:Genus species}, \${3:60} seeds, collected \${4:${collected}-09}
split $1, A \${5:24} seeds, B \${6:24} seeds

day ${year}-${pad(month)}-${pad(date)}
$0`;
}
