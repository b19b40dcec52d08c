import { totals, type TotalsInput } from '#libs/invoicing';

const LINES = 500;
const ROUNDS = 60;
const WARM_UP = 20;
const TARGET_MS = 5;

const RATES = ['20', '5', '10.5'];

/** 500 lines of labour, parts and litres at three rates; prices with up to four decimals, every tenth line with a discount. */
function invoiceOf(lines: number): TotalsInput {
  return {
    lines: Array.from({ length: lines }, (_, index) => ({
      quantity: ((index % 37) + 0.25).toFixed(2),
      unitPrice: (((index * 7919) % 100_000) / 10_000 + 1).toFixed(4),
      ...(index % 10 === 0 ? { allowances: ['0.50'] } : {}),
      vatCategory: 'S',
      vatRate: RATES[index % RATES.length] ?? '20',
    })),
    allowances: [{ amount: '25.00', vatCategory: 'S', vatRate: '20' }],
    prepaid: '100.00',
  };
}

interface FloatLine {
  readonly quantity: number;
  readonly unitPrice: number;
  readonly allowance: number;
  readonly rate: number;
}

/** What a program without exact decimals would do: the same sums in floats, cents rounded by Math.round. */
function bareFloatLoop(lines: readonly FloatLine[]): number {
  const taxable = new Map<number, number>();
  for (const line of lines) {
    const net = Math.round(line.quantity * line.unitPrice * 100) / 100 - line.allowance;
    taxable.set(line.rate, (taxable.get(line.rate) ?? 0) + net);
  }
  taxable.set(20, (taxable.get(20) ?? 0) - 25);
  let payable = -100;
  for (const [rate, sum] of taxable) payable += sum + Math.round(sum * rate) / 100;
  return payable;
}

function millisecondsOf(work: () => unknown, repeats: number): number {
  const start = performance.now();
  for (let repeat = 0; repeat < repeats; repeat += 1) work();
  return (performance.now() - start) / repeats;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

/**
 * How long the checked, exact sums of a 500-line invoice take beside a bare float loop over the same figures, measured in
 * turns in the same run.
 *
 * @returns Three lines: both times with their ratio, whether the aim is met, and what the floats got wrong
 */
export function run(): string {
  const invoice = invoiceOf(LINES);
  const floats = invoice.lines.map((line) => ({
    quantity: Number(line.quantity),
    unitPrice: Number(line.unitPrice),
    allowance: Number(line.allowances?.[0] ?? 0),
    rate: Number(line.vatRate),
  }));
  const answer = totals(invoice);
  if (!answer.ok) throw new Error('The invoice of the measurement has errors.');
  const rounds = Array.from({ length: WARM_UP + ROUNDS }, () => ({
    exact: millisecondsOf(() => totals(invoice), 1),
    bare: millisecondsOf(() => bareFloatLoop(floats), 20),
  })).slice(WARM_UP);
  const exact = rounds.map((round) => round.exact);
  const median = quantile(exact, 0.5);
  const bare = quantile(
    rounds.map((round) => round.bare),
    0.5,
  );
  const off = Math.abs(bareFloatLoop(floats) - Number(answer.value.payable));
  return [
    `Totals of a ${LINES}-line invoice, ${ROUNDS} rounds: p50 ${median.toFixed(2)} ms, p95 ${quantile(exact, 0.95).toFixed(2)} ms; bare float loop p50 ${bare.toFixed(4)} ms; ratio ${Math.round(median / bare)}`,
    `Aim under ${TARGET_MS} ms (p50): ${median < TARGET_MS ? 'met' : 'not met'}`,
    `Payable ${answer.value.payable}; the float loop is off by ${off.toFixed(8)}`,
  ].join('\n');
}
