/** How much there is of a liquid or of powder, in words. */
import type { Exact } from './amounts.ts';
import { numberText, showMass, showVolume, type Shown } from './display.ts';
import type { Form } from './keeping.ts';
import type { Left } from './ledger.ts';

/** mg of powder or mL of a liquid in the unit that a person would read it in. */
export function showAmount(form: Form, amount: Exact): Shown {
  return form === 'powder' ? showMass(amount) : showVolume(amount);
}

/**
 * What is left, as sure as it is known.
 *
 * Example: '300 mg'; 'about 300 mg (279 to 319)' after halving by eye; 'at most 300 mg' after a pinch
 */
export function leftText(form: Form, { least, most, likely }: Left): string {
  const { value, text } = showAmount(form, likely ?? most);
  if (least.equals(most)) return text;
  if (!likely) return `at most ${text}`;
  const perUnit = likely.equals(0) ? undefined : likely.div(value);
  const [low, high] = [least, most].map(limit => numberText(perUnit ? limit.div(perUnit) : limit).text);
  return `about ${text} (${low!} to ${high!})`;
}

/** Example: '640 mg weighed', '12 mL measured' */
export function foundText(form: Form, amount: Exact): string {
  return `${showAmount(form, amount).text} ${form === 'powder' ? 'weighed' : 'measured'}`;
}
