import { version } from '../../../package.json';
import { askedFor, type MixTexts } from '../features/mix/request.ts';
import { mixText, mixTitle } from '../features/mix/text.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { printable, printableJson } from '../report/printable.ts';
import { hanging } from '../report/table.ts';
import type { MixAnswer, MixRequest } from '../solutions/mix-plan.ts';
import { planMix } from '../solutions/mix.ts';
import { exact } from '../solutions/amounts.ts';
import { toolOf, type Bench } from '../solutions/tools.ts';
import { exits, type Exit } from './exits.ts';
import { complain, outputPage, print } from './output.ts';
import type { benches, textFormats } from './program/choices.ts';

export interface MixOptions extends Pick<MixTexts, 'from' | 'packet' | 'halved' | 'purity'> {
  readonly format: (typeof textFormats)[number];
  readonly bench: (typeof benches)[number];
  /** Own tools as typed. */
  readonly tool?: readonly string[];
  /** In percent. */
  readonly tolerance?: string;
}

/** Version of the shape below; it grows when something in it changes its meaning or goes, not when something comes. */
const SHAPE = 1;

/** A strength and a volume in one row of words, as a shell divides them: `500 ppm 20 mL`. */
const IN_ONE_ROW = /^([\d.,]+ *\S*[^\d\s]) +([\d.,]+ *\S*[^\d\s])$/;

/** `plumule mix`: how to make up a solution, or why it cannot be and what can. */
export function mix(
  agent: string, amounts: readonly string[], { format, bench, tool = [], tolerance, ...source }: MixOptions,
): Exit {
  const [strength = '', volume = ''] = amounts.length === 2 ? amounts : IN_ONE_ROW.exec(amounts.join(' '))?.slice(1) ?? [];
  if (strength === '') {
    complain(`“${amounts.join(' ')}” is not a strength and a volume such as “500 ppm” “20 mL”`);
    return exits.unread;
  }
  const asked = askedFor({ agent, strength, volume, ...source }, builtInAgents);
  if (!asked.ok) {
    for (const [field, message] of Object.entries(asked.problems)) complain(`${nameOf(field)}: ${message}`);
    return exits.unread;
  }
  const own = benchOf(bench, tool, tolerance);
  if (own === undefined) return exits.unread;
  const answer = planMix({ ...asked.request, bench: own });
  print(format === 'json' ? mixJson(answer) : textOf(asked.request, answer));
  return answer.possible ? exits.clean : exits.problems;
}

/** Undefined where a tool or the tolerance cannot be understood, which is said. */
function benchOf(base: MixOptions['bench'], texts: readonly string[], tolerance: string | undefined): Bench | undefined {
  if (texts.length === 0 && tolerance === undefined) return base;
  const tools = texts.flatMap(text => {
    const tool = toolOf(text);
    if (!tool) complain(`--tool: “${text}” is not a tool. Write a scale as "0.01 g", a measure as "5 mL by 0.1 mL"`);
    return tool ? [tool] : [];
  });
  const percent = tolerance === undefined ? undefined : Number(tolerance.replace(/ *%$/, ''));
  const isPercent = percent === undefined || (percent > 0 && percent <= 50);
  if (!isPercent) complain(`--tolerance: “${tolerance!}” is not a percentage above 0 and up to 50`);
  if (tools.length < texts.length || !isPercent) return undefined;
  return { tools, base, tolerance: percent === undefined ? undefined : exact(percent).div(100) };
}

function textOf(request: MixRequest, answer: MixAnswer): string {
  // Its other units stand right below a title.
  const apart = answer.possible && answer.sameAs.length > 0 ? '' : '\n';
  const title = `${mixTitle(request)}${answer.possible ? '' : ': not possible'}${apart}`;
  // An option is what the command line has for it.
  const label = request.agent.strengthIs === 'by volume' ? '100 %" if it is undiluted' : '3 %"';
  const more = !answer.possible && answer.code === 'not-a-powder' ? `\nFor example --from "${label}.` : '';
  const { width } = outputPage();
  return `${`${title}\n${mixText(answer)}${more}`.split('\n').flatMap(line => hanging(printable(line), width)).join('\n')}\n`;
}

/** As the help names them. */
function nameOf(field: string): string {
  return field === 'agent' || field === 'strength' || field === 'volume' ? `<${field}>` : `--${field}`;
}

/** What `plumule mix --format json` prints; the README describes it. */
function mixJson(answer: MixAnswer): string {
  return printableJson({ version: SHAPE, plumule: version, ...answer });
}
