/** An invented journal of ten winters as a small nursery leaves it behind: most is over, and little of that is said. */

export interface TenWinters {
  readonly name: string;
  readonly text: string;
}

const plants = ['Gentiana lutea', 'Primula veris', 'Paeonia tenuifolia', 'Lewisia cotyledon', 'Meconopsis betonicifolia', 'Adonis vernalis'];

/**
 * One file a winter, from 2016/17 to 2025/26, and one for regimes. Each winter has a stock that was never finished, a
 * dilution that was used up, a batch that was closed, one counted out, one whose counts just stop, one in a regime that
 * nobody wrote a stage of, one soaked without an end, and a reminder that nobody answered.
 */
export function tenWinters(last = 2025): TenWinters[] {
  const winters = Array.from({ length: 10 }, (_, n) => last - 9 + n);
  return [
    { name: 'regimes.germ', text: 'zone Europe/Vienna\nregime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks\n' },
    ...winters.map(year => ({ name: `${year}-${String(year + 1).slice(2)}.germ`, text: winter(year) })),
  ];
}

function winter(year: number): string {
  const yy = String(year).slice(2);
  const next = year + 1;
  const plant = (n: number) => plants[(year + n) % plants.length]!;
  const lots = ['A', 'B', 'C', 'D', 'E', 'F'].map((name, n) => (
    `lot ${name}${yy} ${plant(n)}, 40 seeds, collected ${year}-09-15, at tin ${n + 1}`));
  return `# Winter ${year}/${String(next).slice(2)}, invented
${lots.join('\n')}
stock S${yy} ${year}-10-01, GA3 100.0 mg, 100.0 mL, at fridge door
dilute D${yy} ${year}-10-01, from S${yy} 20 mL, to 40 mL, at fridge door

day ${year}-11-01
soak A${yy} 19:00, D${yy} 40 mL, 24 h, at jar 1
soak F${yy} 19:00, GA3 500 ppm, 20 mL, at jar 2
sow B${yy}, in grit, 15 C, at shelf 1
sow C${yy}, in grit, 15 C, at shelf 1
sow D${yy}, in moss, regime woodland, at bag ${year - 2010} slot 1
chill E${yy}, 4 C, 90 days, at fridge box 1

day ${year}-11-02
lift A${yy} 19:00
sow A${yy} 19:10, in grit, 15 C, at shelf 1

day ${year}-11-20
count A${yy}, 12
count B${yy}, 3
count C${yy}, 0

day ${year}-12-15
count A${yy}, 20, 8 rotted
count B${yy}, 5
count C${yy}, 1
  The rest looks sound.
due E${yy} ${next}-02-01, look into the bag

day ${next}-03-01
cut B${yy}, 30 fresh, 2 dead
`;
}
