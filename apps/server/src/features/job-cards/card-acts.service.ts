import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import type { Action, CardState } from '#libs/checklist';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { actionFromForm } from './card-form/action-from-form.ts';
import { isFinishedBy, judgeAction, placeOf } from './card-form/judge-action.ts';
import type { TypedFields } from './card-form/typed-form.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { Photos } from '../photos/photos.service.ts';
import { badForm, didNotFit, onlyTheOwnerLetsGo, unknownStep } from './job-cards.errors.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { JobCards } from './job-cards.service.ts';
import { namePeople } from './name-people.ts';

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
      const isStep = after.steps[action.step] !== undefined;
      return { step: isStep ? action.step : null, isFinished: isFinishedBy(after, action) };
    });
  }

  private toAction(jobId: string, state: CardState, { fields, key }: { fields: TypedFields; key: string }): Action {
    const place = placeOf(state, fields['step']);
    if (place === null) throw unknownStep();
    const read = actionFromForm(place, fields);
    if (!read.ok) throw badForm(read.errors);
    const { staffId, role } = currentStaff();
    if (read.kind === 'let-go' && role !== 'owner') throw onlyTheOwnerLetsGo();
    const { kind, step, value } = read;
    return { id: key, card: jobId, kind, step, value, readAt: this.clock.now().toISOString(), by: staffId, byProof: 'session' };
  }

  /** The card after the action. @throws did-not-fit where it would only be kept as a difference. */
  private async refuseMisfit(tx: Tx, state: CardState, action: Action): Promise<CardState> {
    const { after, refusal } = judgeAction(state, action);
    if (refusal) throw didNotFit(namePeople(refusal.why, await this.rows.staffNames(tx)), refusal.field);
    return after;
  }
}

function wordsOf({ value }: Action): string {
  const words = typeof value === 'object' && value !== null && 'words' in value ? value.words : null;
  return typeof words === 'string' ? words : '';
}
