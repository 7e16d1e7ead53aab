/** Asks which batches to soak, in what and how long, and writes the records of all of them. */
import { commands, window, type ExtensionContext } from 'vscode';
import type { Liquid, SoakChoices } from '../../server/src/features/soak/choices.ts';
import type { SoakField, SoakQuestion } from '../../server/src/features/soak/records.ts';
import { ask, askAll, back, choose, chooseSome, type Step } from './asking.ts';
import { cursorOf } from './cursor.ts';
import type { JournalServer } from './server.ts';
import { writeRecord } from './writing.ts';

const TITLE = 'Soak Batches';

interface State {
  readonly question: SoakQuestion;
  readonly liquid: Liquid | undefined;
}

export function registerSoak(context: ExtensionContext, server: JournalServer): void {
  context.subscriptions.push(commands.registerCommand('plumule.soak', () => soak(server)));
}

async function soak(server: JournalServer): Promise<void> {
  const editor = window.activeTextEditor;
  const inHand = editor?.document.languageId === 'plumule' ? editor : undefined;
  const uri = inHand?.document.uri.toString();
  const choices = await server.soakChoices(uri, inHand && cursorOf(inHand));
  if (!choices || choices.batches.length === 0) {
    void window.showInformationMessage('There is no batch to soak. Write a lot first.');
    return;
  }
  const start: State = { question: { batches: [] }, liquid: undefined };
  const stepsOf = stepsFor(choices, async question => (await server.soakRecords(question, uri))?.problems ?? {});
  const answered = await askAll(TITLE, start, ({ liquid }) => stepsOf(liquid));
  if (!answered) return;
  const written = (await server.soakRecords(answered.question, uri))?.written;
  if (!written || !await writeRecord(written)) void window.showErrorMessage('The file has changed. Try again.');
}

type Problems = (question: SoakQuestion) => Promise<Partial<Readonly<Record<SoakField, string>>>>;

function stepsFor(
  choices: SoakChoices, problems: Problems,
): (liquid: Liquid | undefined) => Step<State>[] {
  /** A question for a text that the server reads as a journal would. */
  const typed = (
    field: SoakField, prompt: (state: State) => string, placeholder: string, value?: string,
  ): Step<State> => (
    async (state, heading) => {
      const changed = (text: string) => ({ ...state.question, [field]: text });
      const answer = await ask(heading, {
        prompt: prompt(state), placeholder, value, check: async text => (await problems(changed(text)))[field],
      });
      return typeof answer === 'string' ? { ...state, question: changed(answer) } : answer;
    });

  const batches: Step<State> = async (state, heading) => {
    const items = choices.batches.map(({ id, text }) => ({ label: id, description: text }));
    const chosen = await chooseSome(heading, 'Which batches?', items);
    if (chosen === undefined || chosen === back) return chosen;
    return { ...state, question: { batches: chosen.map(({ label }) => label) } };
  };
  const liquid: Step<State> = async (state, heading) => {
    const items = choices.liquids.map(each => ({ label: each.id, description: each.text, liquid: each }));
    const chosen = await choose(heading, 'In what?', items);
    if (typeof chosen !== 'object') return chosen;
    const { question: { batches: paths } } = state;
    return { liquid: chosen.liquid, question: { batches: paths, liquid: chosen.label } };
  };
  const strength = typed(
    'strength', ({ liquid: from }) => `How strong should it be? Leave it empty to use ${from!.id} as it is.`, '500 ppm');
  const amount = typed('amount', () => 'How much does each batch get?', '10 mL');
  const long = typed('long', () => 'How long? Leave it empty if you do not know yet.', '24 h', choices.long);
  const places = typed(
    'places', ({ question: { batches: paths } }) => (
      `Where? One place for all, or one for each (${paths.join(', ')}), with commas between. It can stay empty.`),
    'jar 1, jar 2',
  );
  return from => [
    batches, liquid, ...from?.isKnown === false ? [] : [strength], ...from?.kind === 'water' ? [] : [amount], long, places,
  ];
}
