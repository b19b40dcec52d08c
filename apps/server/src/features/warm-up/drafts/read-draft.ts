import { type Ask, readLog, readTypedReadings, type Sample, type Understood } from '#libs/warm-up';
import type { Draft } from '../keeping/drafts.repository.ts';

/** What a draft's text comes to; typed readings have no columns to be understood. */
export type DraftReading =
  | { ok: true; samples: readonly Sample[]; understood: Understood | null; shape: string }
  | { ok: false; problem: string; asks: readonly Ask[]; understood: Understood | null; shape: string };

const TYPED = 'typed';

export function readDraft({ source, text, setting }: Pick<Draft, 'source' | 'text' | 'setting'>): DraftReading {
  if (source === 'file') return readLog(text, setting.answers);
  const typed = readTypedReadings(text);
  return typed.ok
    ? { ok: true, samples: typed.samples, understood: null, shape: TYPED }
    : { ok: false, problem: typed.problem, asks: [], understood: null, shape: TYPED };
}
