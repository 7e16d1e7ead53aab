/** A planned solution as a record of the journal. */
import { printQuantity } from '../../model/quantity.ts';
import type { MixPlan, MixSource } from '../../solutions/mix-plan.ts';

/**
 * Undefined where no record can tell of it: a solution drawn from a stock that the journal does not have. `stock` is
 * the journal's bottle or packet that it is made from. Without a date: the record stands below a `day` line.
 */
export function recordOf(id: string, plan: MixPlan, source: MixSource, stock: string | undefined): string | undefined {
  const { amounts, agent } = plan;
  const volume = printQuantity(amounts.makeUpTo.measured);
  if (source.kind === 'stock') {
    return stock !== undefined && amounts.stock
      ? `dilute ${id}, from ${stock} ${printQuantity(amounts.stock.measured)}, to ${volume}` : undefined;
  }
  const powder = source.kind === 'packet' ? packetText(plan) : amounts.powder && printQuantity(amounts.powder.measured);
  if (powder === undefined) return undefined;
  // The record of the packet tells agent and purity.
  if (stock !== undefined) return `stock ${id}, from ${stock} ${powder}, ${volume}`;
  const { percent, form } = source.purity ?? {};
  const purity = percent === undefined ? '' : `, purity ${percent} %${form === undefined ? '' : ` ${form}`}`;
  return `stock ${id}, ${agent.word} ${powder}${purity}, ${volume}`;
}

function packetText({ amounts: { packet } }: MixPlan): string | undefined {
  if (!packet) return undefined;
  const mass = printQuantity(packet.mass);
  if (packet.halved === 0) return mass;
  return `${mass} halved ${packet.halved} ${packet.halved === 1 ? 'time' : 'times'}`;
}
