/** Asks step by step what solution is wanted, says how it is made up, and offers to write its record. */
import { commands, env, window, type ExtensionContext } from 'vscode';
import type { MixQuestion } from '../../server/src/features/mix/answer.ts';
import type { MixShown } from '../../server/src/lsp/mix.ts';
import { ask, back, choose, type Answer, type Heading } from './asking.ts';
import type { JournalServer } from './server.ts';
import { writeRecord } from './writing.ts';

/** Where the solution comes from. */
type Origin = 'powder' | 'packet' | 'strength' | { readonly stock: string };

interface State {
  readonly question: MixQuestion;
  readonly origin: Origin | undefined;
}

/** One question; gives what is known after it. */
type Step = (state: State, heading: Heading, server: Asking) => Promise<Answer<State>>;

type Asking = (question: MixQuestion) => Promise<MixShown | null>;

export function registerMix(context: ExtensionContext, server: JournalServer): void {
  context.subscriptions.push(commands.registerCommand('plumule.mix', () => mix(server)));
}

async function mix(server: JournalServer): Promise<void> {
  const { document } = window.activeTextEditor ?? {};
  const uri = document?.languageId === 'plumule' ? document.uri.toString() : undefined;
  const asking: Asking = question => server.mix(question, uri);
  const state = await answered(asking);
  const reply = state && await asking(state.question);
  if (reply) await show(reply, state.question, asking);
}

/** Goes through the questions, forth and back; undefined where the person gave up. */
async function answered(server: Asking): Promise<State | undefined> {
  const states: State[] = [{ question: {}, origin: undefined }];
  for (;;) {
    const state = states.at(-1)!;
    const steps = stepsFor(state.origin);
    const step = steps[states.length - 1];
    if (!step) return state;
    const heading = { title: 'Mix a Solution', step: states.length, totalSteps: steps.length };
    const answer = await step(state, heading, server);
    if (answer === undefined) return undefined;
    if (answer === back) states.pop();
    else states.push(answer);
  }
}

function stepsFor(origin: Origin | undefined): Step[] {
  const details: Step[] = origin === 'powder' ? [purity]
    : origin === 'packet' ? [packet, halved, purity]
      : origin === 'strength' ? [from] : [];
  return [agent, strength, volume, source, ...details];
}

const agent: Step = async (state, heading, server) => {
  const agents = (await server({}))?.agents ?? [];
  const items = agents.map(({ word, name }) => ({ label: word, description: name === word ? '' : name }));
  const chosen = await choose(heading, 'Which agent?', items);
  return typeof chosen === 'object' ? { ...state, question: { agent: chosen.label } } : chosen;
};

/** A question for a text that the server reads as a journal would. */
function typed(
  field: 'strength' | 'volume' | 'from' | 'packet' | 'halved' | 'purity', prompt: string, example: string, optional = false,
): Step {
  return async (state, heading, server) => {
    const check = async (text: string) => {
      if (text.trim() === '') return optional ? undefined : `Write it as in a journal: ${example}`;
      return (await server({ ...state.question, [field]: text }))?.problems[field];
    };
    const answer = await ask(heading, { prompt, placeholder: example, check });
    return typeof answer === 'string' ? { ...state, question: { ...state.question, [field]: answer } } : answer;
  };
}

const strength = typed('strength', 'How strong should it be?', '500 ppm');
const volume = typed('volume', 'How much do you need?', '20 mL');
const from = typed('from', 'How strong is the stock?', '1000 ppm');
const packet = typed('packet', 'How much powder does the packet hold?', '100 mg');
const halved = typed('halved', 'How often do you halve it by eye? Leave it empty if you are not sure.', '2', true);
const purity = typed('purity', 'How pure is the powder? See its label, or leave it empty.', '90 %', true);

const source: Step = async (state, heading, server) => {
  const reply = await server(state.question);
  const liquid = reply?.agents.find(({ word }) => word === state.question.agent)?.liquid === true;
  const items: { label: string; description?: string; origin: Origin }[] = [
    ...(reply?.stocks ?? []).map(({ id, text }) => ({ label: id, description: text, origin: { stock: id } })),
    ...(liquid ? [] : [
      { label: 'Powder, weighed', origin: 'powder' as const },
      { label: 'A packet of powder, halved by eye', origin: 'packet' as const },
    ]),
    { label: liquid ? 'The liquid as bought' : 'Another stock', description: 'by its strength', origin: 'strength' },
  ];
  const chosen = await choose(heading, 'From what?', items);
  if (typeof chosen !== 'object') return chosen;
  const { origin } = chosen;
  const { agent: word, strength: wanted, volume: amount } = state.question;
  const stock = typeof origin === 'object' ? origin.stock : undefined;
  return { origin, question: { agent: word, strength: wanted, volume: amount, stock } };
};

const WRITE = 'Write the Record';
const COPY = 'Copy';

async function show({ title, text, record }: MixShown, question: MixQuestion, server: Asking): Promise<void> {
  const actions = record === undefined ? [COPY] : [WRITE, COPY];
  const chosen = await window.showInformationMessage(title, { modal: true, detail: text }, ...actions);
  if (chosen === COPY) await env.clipboard.writeText(`${title}\n${text}\n`);
  if (chosen === WRITE) await write(question, server);
}

async function write(question: MixQuestion, server: Asking): Promise<void> {
  const value = (await server(question))?.id;
  const id = await ask({ title: 'Write the Record', step: 1, totalSteps: 1 }, {
    prompt: 'What should it be called?', value,
    check: async text => (await server({ ...question, id: text.trim() }))?.problems.id,
  });
  if (typeof id !== 'string') return;
  const written = (await server({ ...question, id }))?.written;
  if (!written) void window.showInformationMessage('There is no journal to write to. Open a folder with one.');
  else if (!await writeRecord(written)) void window.showErrorMessage('The file has changed. Try again.');
}
