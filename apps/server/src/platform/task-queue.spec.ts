import { describe, expect, it } from '@jest/globals';
import { TaskQueue } from './task-queue.ts';

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

describe('TaskQueue', () => {
  it('never runs more at once than allowed, and runs all', async () => {
    const queue = new TaskQueue({ atOnce: 2, waiting: 10 }, () => new Error('full'));
    let active = 0;
    let most = 0;
    const task = async (): Promise<number> => {
      active += 1;
      most = Math.max(most, active);
      await pause();
      active -= 1;
      return active;
    };
    await Promise.all(Array.from({ length: 9 }, () => queue.run(task)));
    expect(most).toBe(2);
    expect(active).toBe(0);
  });

  it('refuses at once what would wait too long', async () => {
    const queue = new TaskQueue({ atOnce: 1, waiting: 1 }, () => new Error('full'));
    const first = queue.run(pause);
    const second = queue.run(pause);
    await expect(queue.run(pause)).rejects.toThrow('full');
    await Promise.all([first, second]);
    await queue.run(pause);
  });

  it('hands a slot over, so that one who comes at that very moment waits', async () => {
    const queue = new TaskQueue({ atOnce: 1, waiting: 5 }, () => new Error('full'));
    let active = 0;
    let most = 0;
    const task = async (): Promise<void> => {
      most = Math.max(most, (active += 1));
      await pause();
      active -= 1;
    };
    let last: Promise<void> | undefined;
    // Settles in the same turn as the first task, before the second one that waits has gone on.
    const first = queue.run(async () => {
      await task();
      queueMicrotask(() => queueMicrotask(() => void (last = queue.run(task))));
    });
    await Promise.all([first, queue.run(task)]);
    await last;
    expect(last).toBeDefined();
    expect(most).toBe(1);
  });

  it('goes on after a task that failed', async () => {
    const queue = new TaskQueue({ atOnce: 1, waiting: 1 }, () => new Error('full'));
    await expect(queue.run(() => Promise.reject(new Error('crash')))).rejects.toThrow('crash');
    expect(await queue.run(() => Promise.resolve('next'))).toBe('next');
  });
});
