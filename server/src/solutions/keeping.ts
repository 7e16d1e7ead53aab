/**
 * How long what is in a bottle can be relied on, cold, dark and closed, by what it is and in what form. All of these
 * are common practice and rest on no source, but for the half-life of GA3 in water, which stands with the agent.
 */
import { printQuantity, yearsOf, type Duration } from '../model/quantity.ts';
import type { Agent } from './agent.ts';

/** `stock` is made from powder, `bought` a liquid as it came, from the day on which it was opened. */
export type Form = 'powder' | 'stock' | 'dilution' | 'bought';

/** What a grower, or nobody, said of all stocks. */
export interface StockRule {
  readonly value: Duration;
  /** In words: where it comes from. */
  readonly origin: string;
  /** Nobody said it. */
  readonly isDefault?: true | undefined;
}

const practice = 'default: common practice, no source';

/** A stock of which nothing else is known, dark and cold. */
export const stockDefault: StockRule & { readonly isDefault: true } = {
  value: { value: 4, unit: 'years' }, origin: practice, isDefault: true,
};

type Times = Partial<Readonly<Record<Form, Duration>>>;

const years = (value: number): Duration => ({ value, unit: 'years' });
const months = (value: number): Duration => ({ value, unit: 'months' });
const weeks = (value: number): Duration => ({ value, unit: 'weeks' });
const days = (value: number): Duration => ({ value, unit: 'days' });

const gibberellin: Times = { powder: years(4), dilution: years(1) };
const cytokinin: Times = { powder: years(4), stock: years(1), dilution: months(3) };

const byAgent: Readonly<Record<string, Times>> = {
  'GA3': gibberellin, 'GA3K': gibberellin, 'GA4+7': gibberellin, 'kinetin': cytokinin, 'BA': cytokinin,
  'KNO3': { powder: years(10), dilution: years(1) },
  'thiourea': { powder: years(4), stock: months(6), dilution: weeks(4) },
  'ethephon': { bought: years(2), dilution: days(1) },
  'smoke': { bought: years(1), dilution: weeks(2) },
  'peroxide': { bought: months(6), dilution: weeks(1) },
  'bleach': { bought: weeks(8), dilution: days(1) },
};

/** A limit for all stocks is meant for hormones: none of these keeps longer for it. */
const shortLived: ReadonlySet<string> = new Set(['thiourea', 'ethephon', 'smoke', 'peroxide', 'bleach']);

const inForm: Readonly<Record<Form, string>> = {
  powder: ' as dry powder', stock: ' in a stock', dilution: ' once diluted', bought: ' once opened',
};

/** How long an agent keeps in a form, and what says so. The grower's own rule goes before the usual time. */
export function keepingTime(agent: Agent | undefined, form: Form, rule: StockRule = stockDefault): StockRule {
  const usual = agent && byAgent[agent.word]?.[form];
  if (!agent || !usual) return rule;
  if (form !== 'powder' && !rule.isDefault && (!shortLived.has(agent.word) || yearsOf(rule.value) <= yearsOf(usual))) return rule;
  return { value: usual, origin: `${agent.word}${inForm[form]}; ${practice}`, isDefault: true };
}

/** Example: 'keeps 8 weeks; bleach once opened; default: common practice, no source' */
export function keepingText({ value, origin }: StockRule): string {
  return `keeps ${printQuantity(value)}; ${origin}`;
}

/** What is known of an agent in all its forms, for whoever looks it up; undefined where nothing is. */
export function keepingSummary(agent: Agent, rule: StockRule): string | undefined {
  const times = byAgent[agent.word];
  if (!times) return undefined;
  const forms: readonly Form[] = agent.form === 'liquid' ? ['bought', 'dilution'] : ['powder', 'stock', 'dilution'];
  return `Keeps ${forms.map(form => `${printQuantity(keepingTime(agent, form, rule).value)}${inForm[form]}`).join(', ')}`;
}
