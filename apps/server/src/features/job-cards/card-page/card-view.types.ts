import type { CardState, Step } from '#libs/checklist';
import type { DataTable } from '#libs/charts';
import type { FormState } from '../../../platform/pages/form-state.ts';
import type { Role } from '../../../platform/role.ts';
import type { FieldView } from '../../../web/form-field.ts';
import type { CardFigures } from '../card-figures/gather-figures.ts';
import type { CardRow } from '../card-known.ts';

/** Everything the page of a card is made of. */
export interface CardPage {
  readonly row: CardRow;
  readonly state: CardState;
  /** The step that is open on the page. */
  readonly step: Step | null;
  readonly figures: CardFigures;
  /** Display names by the id of the person. */
  readonly names: ReadonlyMap<string, string>;
  readonly staff: { readonly staffId: string; readonly role: Role };
  readonly now: Date;
  readonly timeZone: string;
  readonly lastReceived: Date | null;
  /** Sent to an enrolled tablet, whose script goes on without the server. */
  readonly isTablet?: boolean;
  /** The tablet it is shown on, where it is drawn by one. */
  readonly deviceId?: string;
  /** What the named form of the page says back. */
  readonly formState: (name: string) => FormState;
}

export interface PlatesView {
  legend: string;
  name: string;
  many?: boolean;
  bare?: boolean;
  oneColumn?: boolean;
  required?: boolean;
  hint?: string;
  error?: string;
  options: { id: string; value: string; label: string; note?: string; checked: boolean }[];
}

/** One thing in a form; exactly one of these. */
export interface PartView {
  field?: FieldView;
  plates?: PlatesView;
  words?: string;
}

export interface ButtonView {
  label: string;
  name?: string;
  value?: string;
  /** Classes of the button beside `button`. */
  look: string;
  /** Shows the open valve mark: this passes a hold point. */
  passes?: boolean;
}

export interface FormView {
  name: string;
  action: string;
  /** Where a refused form comes back to. */
  page: string;
  hidden: { name: string; value: string }[];
  parts: PartView[];
  takesFiles: boolean;
  buttons: ButtonView[];
  errors: FormState['summary'];
}

/** The one large figure of a reading, with its keys. */
export interface ReadingView {
  field: FieldView;
  isLong: boolean;
  unit: string;
  doubt: string;
  plates: PlatesView[];
  /** Below the keys, in one row. */
  below: { field: FieldView; plates: PlatesView } | null;
  /** For the page's script: what each instrument can tell, as JSON. */
  instruments: string;
  verdict?: VerdictView;
}

interface VerdictView {
  verdict: 'fits' | 'does-not-fit' | 'inconclusive' | 'not-read';
  word: string;
  sum: string;
}

interface DrawingView {
  svg: string;
  table: DataTable;
}

export interface FigureView {
  value: string;
  unit?: string;
  how: 'known' | 'assumed' | 'computed';
  word: string;
  said: string;
  small: true;
}

/** A form behind its words: shown when they are tapped, and when it was refused. */
export interface FoldView {
  summary: string;
  isOpen: boolean;
  form: FormView;
}

export interface StepView {
  id: string;
  state: 'done' | 'now' | 'ahead' | 'differs';
  hold?: 'shut' | 'passed' | 'passed-without';
  current: boolean;
  title: string;
  note: string;
  spoken: string;
  href: string;
}

export interface PhaseView {
  title: string;
  summary: string;
  isOpen: boolean;
  steps: StepView[];
}

export interface JugsView {
  drawing: DrawingView | null;
  next: FormView | null;
  nextWords: string;
  sure: string;
  assumed: string;
  warnings: string[];
}

export interface WorkView {
  title: string;
  help: string;
  caution: { bold: string; text: string } | null;
  /** What stands in the way, with the way there. */
  shut: { bold: string; text: string; links: { href: string; label: string }[] } | null;
  stands: { bold: string; text: string; hold?: 'passed' | 'passed-without' | 'shut' } | null;
  figures: FigureView[];
  figureNotes: string[];
  warnings: string[];
  facts: FoldView[];
  chart: DrawingView | null;
  reading: ReadingView | null;
  jugs: JugsView | null;
  clock: { words: string; since: string } | null;
  links: { href: string; label: string }[];
  form: FormView | null;
  /** Buttons beside the main form: close a step of jugs, start or stop a timer. */
  others: FormView[];
  /** Photos taken at this step. */
  photos: { href: string; small: string; words: string }[];
  folds: FoldView[];
}

interface DifferenceView {
  what: string;
  why: string;
  settle: FormView | null;
}

export interface CardView {
  title: string;
  scripts: string[];
  head: {
    key: string;
    car: string;
    what: string;
    stages: { name: string; word: string; current: boolean }[];
  };
  /** Out of the card again. */
  ways: { href: string; label: string }[];
  phases: PhaseView[];
  work: WorkView;
  /** `until`: for the page's script, when it can no longer be taken back without a reason. */
  justDone: { text: string; until: string; form: FormView } | null;
  differences: DifferenceView[];
  /** Says at the top that something waits below to be looked at; empty where nothing does. */
  toLookAt: string;
  /** Entries under this person's picked name, for them to confirm. */
  toConfirm: { text: string; form: FormView }[];
  waits: { text: string; form: FormView | null }[];
  checks: string[];
  errors: FormState['summary'];
  /** What the tablet itself has to say: words on top, and what it can't save. */
  said?: string;
  unsaved?: readonly { id: string; words: string; why: string }[];
  sent: { state: 'saved' | 'waiting' | 'refused'; bold: string; text: string };
  lights: { action: string; choices: { value: string; label: string; current: boolean }[] };
}
