/** A result that can be refused. A refusal says in plain words why there is no number; it is never a zero. */

export type RefusalCode =
  | 'not-positive'
  | 'no-volume'
  | 'bad-purity'
  | 'bad-halving'
  | 'unmeasured'
  | 'no-strength'
  | 'no-molar-mass'
  | 'by-volume'
  | 'not-a-powder'
  | 'stronger-than-stock'
  | 'more-than-made'
  | 'above-solubility'
  | 'too-little-to-weigh'
  | 'too-little-to-draw'
  | 'too-little-left'
  | 'packet-too-small'
  | 'packet-too-large'
  | 'beyond-bench'
  | 'too-many-dilutions'
  | 'unknown-stock'
  | 'said-twice'
  | 'beside-stock'
  | 'unread';

export interface Refusal {
  readonly code: RefusalCode;
  readonly message: string;
}

export interface Refused {
  readonly ok: false;
  readonly refusal: Refusal;
}

export type Outcome<Value> = { readonly ok: true; readonly value: Value } | Refused;

export function known<Value>(value: Value): Outcome<Value> {
  return { ok: true, value };
}

export function refused(code: RefusalCode, message: string): Refused {
  return { ok: false, refusal: { code, message } };
}
