/** One question after the other in the editor's own quick input, with a way back. */
import { QuickInputButtons, window, type QuickInput, type QuickPick, type QuickPickItem } from 'vscode';

export const back = Symbol('back');

/** Undefined where the person gave up. */
export type Answer<Value> = Value | typeof back | undefined;

export interface Heading {
  readonly title: string;
  readonly step: number;
  readonly totalSteps: number;
}

export function choose<Item extends QuickPickItem>(
  heading: Heading, placeholder: string, items: readonly Item[],
): Promise<Answer<Item>> {
  const input = listOf(placeholder, items);
  return shown(input, heading, answer => {
    input.onDidAccept(() => answer(input.selectedItems[0]));
    input.onDidTriggerButton(() => answer(back));
  });
}

/** One or more, in the order in which they are listed. */
export function chooseSome<Item extends QuickPickItem>(
  heading: Heading, placeholder: string, items: readonly Item[],
): Promise<Answer<readonly Item[]>> {
  const input = listOf(placeholder, items);
  input.canSelectMany = true;
  return shown(input, heading, answer => {
    input.onDidAccept(() => {
      if (input.selectedItems.length > 0) answer(items.filter(item => input.selectedItems.includes(item)));
    });
    input.onDidTriggerButton(() => answer(back));
  });
}

function listOf<Item extends QuickPickItem>(placeholder: string, items: readonly Item[]): QuickPick<Item> {
  const input = window.createQuickPick<Item>();
  return Object.assign(input, { placeholder, items, matchOnDescription: true });
}

export interface Question {
  readonly prompt: string;
  readonly placeholder?: string;
  readonly value?: string | undefined;
  /** What is wrong with a text; undefined where nothing is. */
  readonly check: (text: string) => Promise<string | undefined>;
}

export function ask(heading: Heading, { prompt, placeholder, value = '', check }: Question): Promise<Answer<string>> {
  const input = window.createInputBox();
  input.prompt = prompt;
  input.placeholder = placeholder;
  input.value = value;
  let asked = 0;
  const validate = async (): Promise<boolean> => {
    const mine = ++asked;
    const message = await check(input.value);
    // A later text has been asked about meanwhile.
    if (mine === asked) input.validationMessage = message;
    return mine === asked && message === undefined;
  };
  return shown(input, heading, answer => {
    input.onDidChangeValue(() => void validate());
    input.onDidAccept(async () => {
      if (await validate()) answer(input.value.trim());
    });
    input.onDidTriggerButton(() => answer(back));
  });
}

/** One question; gives what is known after it. */
export type Step<State> = (state: State, heading: Heading) => Promise<Answer<State>>;

/** Goes through the questions that a state leads to, forth and back; undefined where the person gave up. */
export async function askAll<State>(
  title: string, start: State, stepsFor: (state: State) => readonly Step<State>[],
): Promise<State | undefined> {
  const states = [start];
  for (;;) {
    const state = states.at(-1)!;
    const steps = stepsFor(state);
    const step = steps[states.length - 1];
    if (!step) return state;
    const answer = await step(state, { title, step: states.length, totalSteps: steps.length });
    if (answer === undefined) return undefined;
    if (answer === back) states.pop();
    else states.push(answer);
  }
}

function shown<Value>(
  input: QuickInput & { buttons: readonly unknown[] }, { title, step, totalSteps }: Heading,
  listen: (answer: (value: Answer<Value>) => void) => void,
): Promise<Answer<Value>> {
  const buttons = step > 1 ? [QuickInputButtons.Back] : [];
  Object.assign(input, { title, step, totalSteps, ignoreFocusOut: true, buttons });
  return new Promise(resolve => {
    // The first answer counts; hiding, which follows each of them too, is to give up.
    input.onDidHide(() => {
      resolve(undefined);
      input.dispose();
    });
    listen(value => {
      resolve(value);
      input.hide();
    });
    input.show();
  });
}
