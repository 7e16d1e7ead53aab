/** The commands that work something out before there is a record of it. */
import { Option, type Command } from 'commander';
import type { MixOptions } from '../mix.ts';
import type { PlanOptions } from '../plan.ts';
import { benches, textFormats } from './choices.ts';
import { command, doing } from './command.ts';
import { formatOption } from './options.ts';

export function workOut(program: Command): void {
  command(program, 'plan', {
    summary: 'say what a trial can show before you start it',
    description: 'Says how much treated seed must germinate for the verdict “worth repeating” 4 times in 5,\nand whether another division of the same seeds, or several dishes, would show more.',
    example: 'plumule plan 24 24 --share 20%',
  })
    .argument('<treated>', 'how many seeds you treat')
    .argument('<untreated>', 'how many you leave untreated')
    .option('--share <percent>', 'how much of the untreated seed you expect to germinate; otherwise 10, 40 and 70 %')
    .option('--dishes <number>', 'dishes of each side', '1')
    .option('--treatments <number>', 'treatments that you try beside the same untreated seed', '1')
    .addOption(formatOption(textFormats))
    .action(doing(
      ({ planTrial }, treated: string, untreated: string, options: PlanOptions) =>
        planTrial(treated, untreated, options),
    ));

  command(program, 'mix', {
    summary: 'say how to mix a solution',
    description: 'Says how to mix a solution from powder, from a packet halved by eye, or from a stock.\n' +
    'Strengths, volumes and masses are written as in a journal: "500 ppm" "20 mL", 0.5g/L, 1.44mM.',
    example: 'plumule mix GA3 "500 ppm" "20 mL" --from "1000 ppm"',
  })
    .argument('<agent>', 'GA3, KNO3, peroxide or another')
    .argument('<amounts...>', 'its strength, then the volume wanted: "500 ppm" "20 mL"')
    .usage('<agent> <strength> <volume> [options]')
    .option('--from <strength>', 'from a stock of this strength')
    .option('--packet <mass>', 'from a packet that holds this much powder')
    .option('--halved <times>', 'how often you halve the packet by eye; without it, Plumule chooses')
    .option('--purity <percent>', 'of the powder, from its label; add “acid” or “salt” if the label says which')
    .addOption(new Option('--bench <kind>', 'what you measure with').choices(benches).default('kitchen'))
    .option('--tool <tools...>', 'your own tools instead: a scale by its step "0.01 g", a measure "5 mL by 0.1 mL"')
    .option('--tolerance <percent>', 'how far off reading a tool may be; without it, 5 % of a mass, 2.5 % of a volume')
    .addOption(formatOption(textFormats))
    .action(doing(({ mix }, agent: string, amounts: string[], options: MixOptions) => mix(agent, amounts, options)));
}
