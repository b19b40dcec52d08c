import { type HistoryEntry, type WorkTime } from './card-state.ts';

/** Starts and stops paired per place (step or phase) and person, in the order of receipt. */
export function deriveWorkTimes(history: readonly HistoryEntry[]): readonly WorkTime[] {
  const times: WorkTime[] = [];
  const timers = history.filter((entry) => entry.takenBack === null && entry.kind.endsWith('-timer'));
  for (const entry of [...timers].sort((a, b) => a.order - b.order)) {
    if (entry.kind === 'start-timer') {
      times.push({ step: entry.step, by: entry.by, startedAt: entry.readAt, stoppedAt: null, actionId: entry.actionId });
      continue;
    }
    const isRunning = (time: WorkTime): boolean => time.step === entry.step && time.stoppedAt === null;
    const running = times.filter(isRunning);
    const stopped = running.filter((time) => time.by === entry.by).at(-1) ?? running.at(-1);
    if (stopped) times[times.indexOf(stopped)] = { ...stopped, stoppedAt: entry.readAt };
  }
  return times;
}
