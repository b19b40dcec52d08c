import { Injectable } from '@nestjs/common';
import type { Action } from '#libs/checklist';
import { violatedConstraint } from '#libs/db';
import { currentStaff } from '../../platform/request-context.ts';
import { CardFiguresRepository } from './card-figures.repository.ts';
import { readCardActions } from './card-intake/read-card-actions.ts';
import { badForm, deviceOrderTaken, onAnotherCard, onlyTheOwnerLetsGo } from './job-cards.errors.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { type Acknowledged, JobCards } from './job-cards.service.ts';
import { namePeople } from './name-people.ts';

/** Takes what tablets and programs send: each action once, in order, kept whole even where it does not fit the card. */
@Injectable()
export class CardIntake {
  constructor(
    private readonly cards: JobCards,
    private readonly rows: JobCardsRepository,
    private readonly figures: CardFiguresRepository,
  ) {}

  async take(jobId: string, body: unknown): Promise<Acknowledged[]> {
    const { staffId, role } = currentStaff();
    const read = readCardActions(body, { card: jobId, staffId });
    if (!read.ok) throw badForm(read.errors);
    const { actions } = read;
    if (role !== 'owner' && actions.some(({ kind }) => kind === 'let-go')) throw onlyTheOwnerLetsGo();
    return this.takeRead(jobId, actions);
  }

  /**
   * Actions of one card as an enrolled tablet sends them, each with who is proven to have done it (null: nobody, the name is only
   * said). All of them or none: the caller tries them one by one where one of them is at fault.
   */
  async takeFromTablet(jobId: string, sent: readonly { action: object; provenId: string | null }[]): Promise<Acknowledged[]> {
    const actions = sent.flatMap(({ action, provenId }) => {
      const read = readCardActions({ actions: [action] }, { card: jobId, staffId: provenId ?? '' });
      if (!read.ok) throw badForm(read.errors);
      return read.actions;
    });
    const staff = await this.rows.staffRoles();
    if (actions.some(({ kind, by, byProof }) => kind === 'let-go' && (byProof !== 'session' || staff.get(by) !== 'owner')))
      throw onlyTheOwnerLetsGo();
    return this.takeRead(jobId, actions);
  }

  private async takeRead(jobId: string, actions: readonly Action[]): Promise<Acknowledged[]> {
    const names = await this.rows.staffNames();
    refuseStrangers(actions, names);
    const [elsewhere] = await this.figures.onOtherCards(
      jobId,
      actions.map(({ id }) => id),
    );
    if (elsewhere !== undefined) throw onAnotherCard(elsewhere);
    const acknowledged = await this.record(jobId, actions);
    return acknowledged.map(({ id, difference }) => ({ id, difference: difference && namePeople(difference, names) }));
  }

  private async record(jobId: string, actions: readonly Action[]): Promise<Acknowledged[]> {
    try {
      return await this.cards.record(jobId, actions);
    } catch (error) {
      if (violatedConstraint(error) === 'job_action_device_order') throw deviceOrderTaken();
      throw error;
    }
  }
}

function refuseStrangers(actions: readonly Action[], names: ReadonlyMap<string, string>): void {
  const errors = actions.flatMap(({ by }, index) =>
    names.has(by) ? [] : [{ field: `actions.${index}.by`, message: 'Nobody of this id works here.' }],
  );
  if (errors.length > 0) throw badForm(errors);
}
