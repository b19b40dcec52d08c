import type { Trouble } from './answers.ts';

/** What the line at the foot is made of. */
export interface SentFacts {
  readonly waiting: number;
  readonly unsaved: number;
  readonly trouble: Trouble | null;
  readonly isSending: boolean;
  /** Why this tablet can keep nothing at all; null where it can. */
  readonly storage: string | null;
  /** Its free space is nearly used up. */
  readonly isNearlyFull: boolean;
  /** Whether a reload without the server brings the card back. */
  readonly survivesReload: boolean;
  /** Time of day of the last contact; null where there has been none. */
  readonly contactAt: string | null;
  /** Words on a wrong clock; empty where it is right. */
  readonly clock: string;
}

export interface SentView {
  state: 'saved' | 'waiting' | 'refused';
  bold: string;
  text: string;
  beads: number[];
  see?: { href: string; label: string };
}

const MOST_BEADS = 8;

const WHY: Readonly<Record<Trouble, string>> = {
  'no-network': 'no answer from the workshop’s server; kept on this tablet and sent by itself',
  'server-failed': 'the server can’t take it just now; kept on this tablet and sent again by itself',
  'not-enrolled': 'this tablet is not enrolled, or no longer: enrol it again at /tablet; kept here until then',
  refused: 'the server did not understand; kept here',
};

/** The truth about what has been kept where, in one line. */
export function sentWords(facts: SentFacts): SentView {
  const { waiting, unsaved, storage } = facts;
  if (storage !== null) return view('refused', 'Nothing can be kept here', storage);
  if (unsaved > 0) {
    const rest = waiting > 0 ? `; ${waiting} more waiting` : '';
    return { ...view('refused', `${unsaved} can’t be saved`, `see why${rest}`), see: { href: '#unsaved', label: 'See why' } };
  }
  if (waiting > 0) {
    const beads = Array.from({ length: Math.min(waiting, MOST_BEADS) }, (_, index) => index + 1);
    const why = facts.trouble === null ? 'being sent' : WHY[facts.trouble];
    return { ...view('waiting', `${waiting} waiting`, sentence([why, ...beside(facts)])), beads };
  }
  const contact = facts.contactAt === null ? '' : `last contact ${facts.contactAt}`;
  const away = facts.trouble === null ? contact : facts.trouble === 'no-network' ? `no network now, ${contact}` : WHY[facts.trouble];
  return view('saved', 'All saved', sentence([away, ...beside(facts)]));
}

function beside({ isNearlyFull, survivesReload, clock }: SentFacts): string[] {
  return [
    isNearlyFull ? 'Its storage is nearly full: send soon, take no more photos.' : '',
    survivesReload ? '' : 'Without the server this page can’t be opened again: don’t reload it.',
    clock,
  ];
}

const sentence = (parts: readonly string[]): string =>
  parts
    .filter((part) => part !== '')
    .join('. ')
    .replaceAll('..', '.');

const view = (state: SentView['state'], bold: string, text: string): SentView => ({ state, bold, text, beads: [] });
