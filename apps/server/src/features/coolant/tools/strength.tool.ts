import { protection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import { plainGroup } from '../form/field-group.ts';
import { glycolOf } from '../form/glycol-field.ts';
import { resultFigure, textFigure } from '../result-figure.ts';
import { STRENGTH_PROBLEMS, strengthField, strengthFields, strengthOf } from './strength-fields.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

/** Any one way of saying how strong a mixture is, in all the others. */
export const STRENGTH: Tool = {
  key: 'strength',
  title: 'Strength',
  lead: 'One strength, said every way.',
  rest: 'Of what is in the system or in a drum: volume, mass, freezing point, share of an average concentrate.',
  groups: () => plainGroup(strengthFields()),
  cautions: ['handling'],
  reckon: (form, { units }) => {
    const strength = strengthOf(form);
    if (!strength) return asks(strengthField(form));
    const found = protection({ glycol: glycolOf(form), ...strength, product: { isContentUnknown: true } });
    return outcomeOf(found, STRENGTH_PROBLEMS, (result) => {
      const safe = `${result.isAtLeast ? 'at least ' : ''}${formatFigure(result.shownFreezingPointC, 0)} °C`;
      const { massPercent, productPercent } = result;
      return {
        headline: `Safe to ${safe}.`,
        figures: [
          resultFigure(result.freezingPointC, 'temperature', { units, word: 'first ice', said: 'not rounded' }),
          resultFigure(result.volumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume' }),
          massPercent === null
            ? textFigure('not told', '', { word: 'of pure glycol, by mass', said: 'beyond the table' })
            : resultFigure(massPercent, 'massPercent', { units, word: 'of pure glycol' }),
          ...(productPercent === null
            ? []
            : [resultFigure(productPercent, 'percent', { units, word: 'of product', said: 'if it holds 93 % by mass' })]),
        ],
        lines: [],
        sure: 'ASHRAE table, read between its rows without ever bending back; other published tables lie within 3 K. Shown rounded towards warmer.',
        assumptions: result.assumptions,
        warnings: result.warnings.filter(({ code }) => code !== 'content-from-fallback'),
        sources: result.sources,
      };
    });
  },
};
