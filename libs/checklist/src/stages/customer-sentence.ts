import { type Wait, type WaitKind } from '../card/card-state.ts';
import { type Stage } from './stages.ts';

const AT_STAGE: Readonly<Record<Stage, string>> = {
  'spoken-of': 'We have noted your call and will agree a day with you',
  expected: 'We expect your car as agreed',
  standing: 'Your car is here with us',
  opened: 'Your car is being worked on',
  'closed-up': 'The parts are in and your car is being put together',
  filled: 'Your car is filled again and about to be run warm',
  'run-hot': 'Your car has been run to full temperature',
  settling: 'Your car is cooling down so that the level can be checked cold',
  settled: 'Your car is ready',
  'keys-out': 'Your car is back with you',
  squared: 'Your car is back with you and everything is settled',
  'fell-through': 'The visit did not take place',
};

const WAITS_FOR: Readonly<Record<WaitKind, string>> = {
  yes: 'we are waiting for your yes',
  part: 'we are waiting for a part',
  cold: 'it has to cool down before we can open it',
  bay: 'it is waiting for a free bay',
  person: 'it is waiting for one of us to be free',
  customer: 'we are waiting to hear from you',
  'outside-firm': 'another firm is doing its part',
};

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/**
 * One sentence for the customer from the stage and the oldest wait.
 *
 * @param stage Where the job is
 * @param waits Its open waits; `until` is shown as the date it is written with
 * @returns A sentence
 * @example customerSentence('standing', []) // 'Your car is here with us.'
 */
export function customerSentence(stage: Stage, waits: readonly Pick<Wait, 'kind' | 'since' | 'until'>[]): string {
  const isOver = stage === 'keys-out' || stage === 'squared' || stage === 'fell-through';
  const oldest = [...waits].sort((a, b) => Date.parse(a.since) - Date.parse(b.since))[0];
  if (!oldest || isOver) return `${AT_STAGE[stage]}.`;
  const day = oldest.until === null ? null : dayWords(oldest.until);
  return `${AT_STAGE[stage]}; ${WAITS_FOR[oldest.kind]}${day === null ? '' : `, expected by ${day}`}.`;
}

function dayWords(written: string): string | null {
  const found = /^\d{4}-(\d\d)-(\d\d)/.exec(written);
  const month = MONTHS[Number(found?.[1]) - 1];
  return found && month ? `${Number(found[2])} ${month}` : null;
}
