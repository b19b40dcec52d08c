import { type Step } from '../template/template.ts';

export const REMOVED_PART: Step = {
  key: 'removed-part',
  title: 'Removed part cleaned and photographed',
  help: 'Beside the candidates, stamp readable. An original-looking part is good evidence; a pattern part may have been wrong already: then measure the recess in the engine.',
  evidence: { kind: 'tick' },
  once: true,
};

export const VARIANT: Step = {
  key: 'variant',
  title: 'Variant settled on the Parts bench',
  help: 'The same, side by side, with a photo; figures only while two candidates are open. A bench test shows a part’s fault, never its nominal temperature.',
  evidence: { kind: 'variant' },
  hold: 'variant-settled',
  once: true,
};

export const RECESS_CLEAN: Step = {
  key: 'recess-clean',
  title: 'Recess and faces clean',
  help: 'Old seal and scale off without scoring the metal, nothing left inside the passages.',
  evidence: { kind: 'tick' },
  behind: ['safe-to-open'],
};

export const FITTED: Step = {
  key: 'fitted',
  title: 'Fitted with a new seal',
  help: 'Wax side to the engine, bleed device at the highest point, seated flush. One sealing method only; dry or wetted with coolant as the manual or the seal maker says, never mineral grease.',
  evidence: { kind: 'tick' },
  behind: ['safe-to-open', 'variant-settled'],
};

export const TORQUED: Step = {
  key: 'torqued',
  title: 'Closed and torqued',
  help: 'From the vehicle maker’s manual: its value, unit, document and page. Set at, how many of how many, in its sequence; stages and angles as printed.',
  evidence: { kind: 'torque' },
  hold: 'closed-and-torqued',
  behind: ['safe-to-open', 'variant-settled'],
  figures: ['torque'],
};

export const HOSES_ON: Step = {
  key: 'hoses-on',
  title: 'Hoses and clips on',
  help: 'Every hose pushed home, clips on their old marks, drain closed, plugs connected.',
  evidence: { kind: 'tick' },
  behind: ['safe-to-open'],
};
