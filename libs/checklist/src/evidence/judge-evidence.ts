import { safeToOpen } from '../holds/safe-to-open.ts';
import { type Step } from '../template/template.ts';
import { type EvidenceValue } from './evidence-value.ts';

export interface Judgement {
  readonly passes: boolean;
  readonly why: string;
}

const PASSES: Judgement = { passes: true, why: '' };

/** Whether a hold point's evidence opens it. Evidence that does not is still a fact and stays on the card. */
export function judgeEvidence(step: Step, value: EvidenceValue): Judgement {
  switch (value.kind) {
    case 'cold-reading': {
      const { verdict, why } = safeToOpen(value.reading);
      return { passes: verdict === 'safe', why };
    }
    case 'choice':
      return judgeChoice(step, value.choice);
    case 'count':
      return value.counted === value.of
        ? PASSES
        : stays(`${value.counted} of ${value.of} are back: find the rest before the engine starts.`);
    case 'torque':
      if (value.entry.tightened < value.entry.of) return stays(`${value.entry.tightened} of ${value.entry.of} are tightened.`);
      return value.entry.inSequence ? PASSES : stays("Not tightened in the manual's sequence: slacken and tighten in sequence.");
    case 'tick':
    case 'reading':
    case 'litres':
    case 'list':
    case 'variant':
    case 'fill':
    case 'level':
      return PASSES;
  }
}

function judgeChoice(step: Step, key: string): Judgement {
  if (step.evidence.kind !== 'choice') return stays('This answer belongs to another step.');
  const option = step.evidence.options.find((one) => one.key === key);
  return option?.passes === true ? PASSES : stays(`${step.title}: ${option?.words ?? key}.`);
}

function stays(why: string): Judgement {
  return { passes: false, why };
}
