import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { type Action, applyAction, type CardState, findStep, type Step, stepsOf, WHOLE_CARD } from '#libs/checklist';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { actionFromForm } from './card-form/action-from-form.ts';
import { MAIN_FIELD } from './card-form/evidence-from-form.ts';
import type { TypedFields } from './card-form/typed-form.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { Photos } from '../photos/photos.service.ts';
import { badForm, didNotFit, onlyTheOwnerLetsGo, unknownStep } from './job-cards.errors.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { JobCards } from './job-cards.service.ts';
import { namePeople } from './name-people.ts';

/** What is said beside a step, and what takes it back, leaves the person at it. */
const LEADS_ON: ReadonlySet<string> = new Set(['tick', 'record', 'pass-without', 'not-applicable', 'stop-timer', 'let-go']);

/** Where a form's act leaves the person. */
export interface Acted {
  /** The step of the form is finished: the card leads on to the next one. */
  isFinished: boolean;
  /** Null where the act belonged to the whole card or to a phase. */
  step: string | null;
}

/**
 * What is done by the forms of the card. A mistake goes back to its form and leaves no trace; what fits is an action with the
 * key of its form, so that a form sent twice is one action.
 */
@Injectable()
export class CardActs {
  constructor(
    private readonly cards: JobCards,
    private readonly rows: JobCardsRepository,
    private readonly photos: Photos,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async act(jobId: string, typed: TypedFields, { key, photo }: { key: string; photo: UploadedFile | undefined }): Promise<Acted> {
    const picture = photo && (await this.photos.develop(photo.bytes));
    const photoId = randomUUID();
    // Which photo it is says the file, never a field of the form.
    const fields = { ...typed, photo: picture ? photoId : '' };
    return this.unitOfWork.run(async (tx) => {
      await this.rows.lock(tx, jobId);
      const { state } = await this.cards.open(jobId, tx);
      const action = this.toAction(jobId, state, { fields, key });
      const after = await this.refuseMisfit(tx, state, action);
      if (picture)
        await this.photos.keepIn(tx, picture, { id: photoId, jobId, byId: action.by, step: action.step, words: wordsOf(action) });
      await this.cards.recordIn(tx, jobId, [action]);
      const status = after.steps[action.step]?.state;
      if (status === undefined) return { step: null, isFinished: action.kind === 'go-back' };
      return { step: action.step, isFinished: LEADS_ON.has(action.kind) && status !== 'open' && status !== 'taken-back' };
    });
  }

  private toAction(jobId: string, state: CardState, { fields, key }: { fields: TypedFields; key: string }): Action {
    const read = actionFromForm(placeOf(state, fields['step']), fields);
    if (!read.ok) throw badForm(read.errors);
    const { staffId, role } = currentStaff();
    if (read.kind === 'let-go' && role !== 'owner') throw onlyTheOwnerLetsGo();
    const { kind, step, value } = read;
    return { id: key, card: jobId, kind, step, value, readAt: this.clock.now().toISOString(), by: staffId, byProof: 'session' };
  }

  /** The card after the action. @throws did-not-fit where it would only be kept as a difference. */
  private async refuseMisfit(tx: Tx, state: CardState, action: Action): Promise<CardState> {
    const after = applyAction(state, action);
    const difference = after.differences.find(({ actionId }) => actionId === action.id);
    if (!difference || isInHistory(after, action.id)) return after;
    throw didNotFit(namePeople(difference.why, await this.rows.staffNames(tx)), fieldOf(state, action));
  }
}

/** Beside which field of its form a misfit is shown. */
function fieldOf({ template }: CardState, { kind, step }: Action): string {
  if (kind === 'pass-without') return 'reason';
  if (kind === 'take-back') return 'takenBackWhy';
  const evidence = kind === 'record' ? findStep(template, step)?.evidence : undefined;
  return evidence ? MAIN_FIELD[evidence.kind] : '';
}

function wordsOf({ value }: Action): string {
  const words = typeof value === 'object' && value !== null && 'words' in value ? value.words : null;
  return typeof words === 'string' ? words : '';
}

function placeOf(state: CardState, key: unknown): Step | string {
  const place = typeof key === 'string' ? key : '';
  const step = findStep(state.template, place);
  if (step) return step;
  if (place === WHOLE_CARD || state.template.phases.some((phase) => phase.key === place)) return place;
  throw unknownStep();
}

function isInHistory(state: CardState, actionId: string): boolean {
  const entries = [...state.history, ...stepsOf(state.template).flatMap(({ key }) => state.steps[key]?.history ?? [])];
  return entries.some((entry) => entry.actionId === actionId);
}
