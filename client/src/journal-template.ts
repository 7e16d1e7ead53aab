/** The text that a new journal begins with, and the name of its file: plain text, apart from the editor. */

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

/** A heading, the limit for GA3, and today's `day` line, with the first records as comments to take over. */
export function journalTemplate(year: number, month: number, date: number): string {
  const [first, second] = winterOf(year, month);
  return `# Winter ${first}/${pad(second % 100)}
limit GA3, 1000 ppm

# lot GEN-1 Gentiana lutea, 60 seeds, collected ${first}-09, from own bed, stored dry
# split GEN-1, A 24 seeds, B 24 seeds

day ${year}-${pad(month)}-${pad(date)}
`;
}
