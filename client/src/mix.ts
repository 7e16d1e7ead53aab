/** Asks step by step what solution is wanted, says how it is made up, and offers to write its record. */
import { commands, window, type ExtensionContext } from 'vscode';
import type { MixQuestion } from '../../server/src/features/mix/answer.ts';
import type { MixShown } from '../../server/src/lsp/mix.ts';
import { ask, askAll, choose, type Answer, type Heading } from './asking.ts';
import { MixPage, type Mixed } from './mix-page.ts';
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
  const page = new MixPage(context, ({ question, uri }: Mixed) => write(question, asked => server.mix(asked, uri)));
  context.subscriptions.push(page, commands.registerCommand('plumule.mix', () => mix(server, page)));
}

async function mix(server: JournalServer, page: MixPage): Promise<void> {
  const { document } = window.activeTextEditor ?? {};
  const uri = document?.languageId === 'plumule' ? document.uri.toString() : undefined;
  const asking: Asking = question => server.mix(question, uri);
  let question = (await answered(asking))?.question;
  while (question) {
    const reply: MixShown | null = await asking(question);
    if (!reply) return;
    page.show({ shown: reply, question, uri });
    question = reply.again && await askedAgain(reply, question, asking);
  }
}

const AGAIN = { strength: 'How strong should it be instead?', volume: 'How much should it be instead?' } as const;

/** After a refusal: the question that stands in the way, with what can be made filled in. */
async function askedAgain(
  { title, again, refusal }: MixShown, question: MixQuestion, server: Asking,
): Promise<MixQuestion | undefined> {
  const { field, value } = again!;
  const changed = (text: string) => ({ ...question, [field]: text });
  const answer = await ask({ title, step: 1, totalSteps: 1 }, {
    prompt: `${refusal!.message} ${AGAIN[field]}`, value, check: async text => (await server(changed(text)))?.problems[field],
  });
  return typeof answer === 'string' ? changed(answer) : undefined;
}

/** Undefined where the person gave up. */
function answered(server: Asking): Promise<State | undefined> {
  const start: State = { question: {}, origin: undefined };
  return askAll('Mix a Solution', start, ({ origin }) => stepsFor(origin)
    .map(step => (state: State, heading: Heading) => step(state, heading, server)));
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
