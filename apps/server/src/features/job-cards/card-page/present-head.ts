import { type CardState, STAGE_WORDS, stagesOf } from '#libs/checklist';
import type { CardPage, CardView } from './card-view.types.ts';

/** Whose car it is, and the stages from where it is onwards. */
export function presentHead({ row, state }: CardPage): CardView['head'] {
  const stages = stagesOf(state.template);
  const here = state.stage;
  const ahead = stages.slice(stages.indexOf(here) + 1).filter((stage) => stage !== 'squared' || here === 'keys-out');
  return {
    key: row.keyTag === null ? '–' : String(row.keyTag),
    car: `${row.vehicle.make} ${row.vehicle.model}`,
    what: `${row.vehicle.registration}, ${state.template.name.toLowerCase()}`,
    stages: [here, ...ahead].map((stage, index) => ({
      name: stage,
      word: index === 0 ? `${STAGE_WORDS[stage]}${warmth(state)}` : STAGE_WORDS[stage],
      current: index === 0,
    })),
  };
}

/** Hot or cold only by a reading. */
function warmth(state: CardState): string {
  const hold = state.holds['safe-to-open'];
  if (state.stage !== 'standing' || hold === undefined) return '';
  if (hold.state === 'passed' && !hold.spent) return ', cold';
  return state.waits.some(({ kind, actionId }) => kind === 'cold' && actionId === null) ? ', not cold' : '';
}
