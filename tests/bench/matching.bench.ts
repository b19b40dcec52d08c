import {
  type CreditLine,
  type CreditMatchingQuestion,
  type CreditUnit,
  matchCreditLines,
  matchStatement,
  type StatementQuestion,
} from '#libs/matching';

const SIZES = [250, 500, 1000, 2000];
const ROUNDS = 3;
const UNITS_PER_RETURN = 4;

/** How a supplier's lines can be told apart. */
interface Habit {
  readonly name: string;
  readonly partNumbers: number;
  readonly quotesReference: boolean;
}

const HABITS: readonly Habit[] = [
  { name: 'return notes quoted, 40 part numbers', partNumbers: 40, quotesReference: true },
  { name: 'no references, 40 part numbers', partNumbers: 40, quotesReference: false },
  { name: 'no references, one part number for everything', partNumbers: 1, quotesReference: false },
];

/** Repeatable numbers from 0 to 1 (linear congruence), so that every run measures the same question. */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
}

const dayOf = (offset: number): string => new Date(Date.UTC(2026, 0, 1 + offset)).toISOString().slice(0, 10);

/** As many lines as units: most right, one in twenty short, one in thirty twice in place of one that is missing. */
function question(size: number, { partNumbers, quotesReference }: Habit): CreditMatchingQuestion {
  const next = numbersFrom(size);
  const units = Array.from({ length: size }, (_, index): CreditUnit => {
    const part = Math.floor(next() * partNumbers);
    return {
      id: `U${index}`,
      references: [`RN-${10_000 + Math.floor(index / UNITS_PER_RETURN)}`],
      parts: [`TX-${50_000 + 7 * part}`],
      charged: (20 + part + Math.floor(next() * 300) / 100).toFixed(2),
      handedOverOn: dayOf(Math.floor(next() * 200)),
    };
  });
  const lines = units.map((unit, index): CreditLine => {
    const luck = next();
    const source = luck < 1 / 30 ? (units[Math.floor(next() * size)] ?? unit) : unit;
    const isShort = next() < 1 / 20;
    return {
      id: `L${index}`,
      documentId: `CN-${Math.floor(index / 10)}`,
      reference: quotesReference ? source.references[0] : null,
      part: source.parts[0],
      quantity: 1,
      net: isShort ? (Number(source.charged) * 0.9).toFixed(2) : source.charged,
      date: dayOf(200 + Math.floor(next() * 40)),
    };
  });
  return { lines, units };
}

/** As many statement lines as documents, three in four of them credits, every tenth without its number. */
function statement(size: number): StatementQuestion {
  const next = numbersFrom(size + 1);
  const documents = Array.from({ length: size }, (_, index) => ({
    id: `D${index}`,
    kind: index % 4 === 0 ? ('invoice' as const) : ('credit-note' as const),
    numbers: [`N-${30_000 + index}`],
    total: (20 + Math.floor(next() * 20_000) / 100).toFixed(2),
    date: dayOf(Math.floor(next() * 90)),
  }));
  const lines = documents.map(({ kind, numbers, total, date }, index) => ({
    id: `L${index}`,
    number: next() < 1 / 10 ? null : numbers[0],
    text: kind === 'invoice' ? 'Invoice' : 'Credit note',
    amount: kind === 'invoice' ? total : `-${total}`,
    date,
  }));
  return { lines, documents };
}

/** Median time on the clock, and of the processor alone (other work on the machine doesn't count). */
function timed(once: () => void): string {
  const times = Array.from({ length: ROUNDS }, () => {
    const cpu = process.cpuUsage();
    const started = performance.now();
    once();
    const clock = performance.now() - started;
    const { user, system } = process.cpuUsage(cpu);
    return { clock, processor: (user + system) / 1000 };
  });
  const median = (pick: (time: { clock: number; processor: number }) => number): string =>
    (times.map(pick).sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN).toFixed(0);
  return `${median(({ clock }) => clock)} ms (processor ${median(({ processor }) => processor)} ms)`;
}

/** Times the matching of as many lines as open returns or documents, at growing size. Wanted: 1,000 to 1,000 under 500 ms. */
export function run(): string {
  matchCreditLines(question(SIZES[0] ?? 1, { name: 'warm-up', partNumbers: 40, quotesReference: true }));
  const credits = HABITS.map((habit) => {
    const figures = SIZES.map((size) => {
      const asked = question(size, habit);
      const { matches, differences } = matchCreditLines(asked);
      return `${size}: ${timed(() => void matchCreditLines(asked))}, ${matches.length} matched, ${differences.length} differences`;
    });
    return `${habit.name}\n  ${figures.join('\n  ')}`;
  });
  const statements = SIZES.map((size) => {
    const asked = statement(size);
    return `${size}: ${timed(() => void matchStatement(asked))}, ${matchStatement(asked).matches.length} matched`;
  });
  return [...credits, `statement lines to documents\n  ${statements.join('\n  ')}`].join('\n');
}
