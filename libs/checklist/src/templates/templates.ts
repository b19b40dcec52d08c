import { type Template } from '../template/template.ts';
import { COOLANT_CHANGE } from './coolant-change.ts';
import { DIAGNOSIS_VISIT } from './diagnosis-visit.ts';
import { THERMOSTAT_JOB } from './thermostat-job.ts';

/** The templates that come with the tool; a workshop's own changes are new versions. */
export const TEMPLATES: readonly Template[] = [THERMOSTAT_JOB, COOLANT_CHANGE, DIAGNOSIS_VISIT];
