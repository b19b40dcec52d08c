import { Injectable } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import type { Tx } from '#libs/db';

/** What else in the house must follow when a job's card has moved on; it runs in the transaction of the card's actions. */
export type CardFollower = (tx: Tx, jobId: string, card: CardState) => Promise<unknown>;

/** Other rooms ask here to be told of a card that moved on, so that the card need not know them. */
@Injectable()
export class CardFollowers {
  private readonly followers: CardFollower[] = [];

  add(follower: CardFollower): void {
    this.followers.push(follower);
  }

  async tell(tx: Tx, jobId: string, card: CardState): Promise<void> {
    for (const follow of this.followers) await follow(tx, jobId, card);
  }
}
