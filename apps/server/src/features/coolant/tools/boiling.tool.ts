import { boiling } from '#libs/coolant';
import { formatFigure, shownTemperature } from '#libs/units';
import { plainGroup } from '../form/field-group.ts';
import { glycolOf } from '../form/glycol-field.ts';
import { boilingFields } from '../refill/boiling-fields.ts';
import { resultFigure } from '../result-figure.ts';
import { STRENGTH_PROBLEMS, strengthField, strengthFields, strengthOf } from './strength-fields.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

/** Where it boils under its cap at this height. */
export const BOILING: Tool = {
  key: 'boiling',
  title: 'Boiling',
  lead: 'Where it boils, with the cap on.',
  rest: 'What the cap held on the tester beats what is printed on it.',
  groups: (context) => plainGroup([...strengthFields(), ...boilingFields(context, {})]),
  cautions: ['opening'],
  reckon: (form, { units }) => {
    const strength = strengthOf(form);
    if (!strength) return asks(strengthField(form));
    const { cap, capHeld, altitude, hottest } = form.figures;
    const found = boiling({
      glycol: glycolOf(form),
      ...strength,
      altitudeM: altitude,
      capGaugeKPa: cap,
      capMeasuredKPa: capHeld,
      hottestExpectedC: hottest,
    });
    const fields = {
      ...STRENGTH_PROBLEMS,
      altitudeM: 'altitude',
      capGaugeKPa: 'cap',
      capMeasuredKPa: 'capHeld',
      hottestExpectedC: 'hottest',
    };
    return outcomeOf(found, fields, (result) => {
      const shown = formatFigure(Math.floor(shownTemperature(result.boilingPointC, units.temperature)), 0);
      return {
        headline: `Boils at ${shown} ${units.temperature}.`,
        figures: [
          resultFigure(result.boilingPointC, 'temperature', { units, word: 'boils', said: 'not rounded' }),
          resultFigure(result.absolutePressureKPa, 'pressure', { units, word: 'absolute pressure' }),
          resultFigure(result.capGaugeKPa, 'pressure', { units, word: 'cap', said: 'above the air' }),
          ...(result.marginK === null
            ? []
            : [resultFigure(result.marginK, 'difference', { units, word: 'in hand', said: 'above the hottest expected' })]),
        ],
        lines: [],
        sure: 'Within 1 K of published vapour pressures over the whole range of strengths; the cap is what is least certain.',
        assumptions: result.assumptions,
        warnings: result.warnings,
        sources: result.sources,
      };
    });
  },
};
