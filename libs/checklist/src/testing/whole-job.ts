import { type Action } from '../actions/action.ts';
import { tap } from './tap.ts';

export const COLD = { tempC: 24.5, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' };

export const TORQUE = {
  setAt: 12,
  unit: 'Nm',
  tightened: 3,
  of: 3,
  inSequence: true,
  document: 'Workshop manual, group 20',
  page: '20-14',
};

/** From the keys on the hook to the system opened and drained. */
export function untilDrained(): Action[] {
  return [
    tap('tick', 'keys-tagged'),
    tap('record', 'odometer', { value: 148_220 }),
    tap('tick', 'damage-noted'),
    tap('record', 'thermostat-kind', { choice: 'wax' }),
    tap('record', 'access-off', { items: ['Air duct', 'Battery cover'] }),
    tap('pass', 'measured-cold', COLD),
    tap('record', 'level-on-arrival', { belowMarkMl: 400 }),
    tap('tick', 'tray'),
    tap('tick', 'cap-off'),
    tap('record', 'drained', { litres: 5.2 }),
    tap('record', 'kept', { litres: 3.2 }),
    tap('tick', 'housing-off'),
  ];
}

export function untilFilled(): Action[] {
  return [
    ...untilDrained(),
    tap('tick', 'removed-part'),
    tap('pass', 'variant', { variant: 'NR-4410', basis: 'side-by-side' }),
    tap('tick', 'recess-clean'),
    tap('tick', 'fitted'),
    tap('pass', 'torqued', TORQUE),
    tap('tick', 'hoses-on'),
    tap('pour-jug', 'first-fill', { keptMl: 3200 }),
    tap('pour-jug', 'first-fill', { productMl: 1000, waterMl: 1000 }),
    tap('tick', 'first-fill'),
    tap('record', 'bled', { choice: 'vacuum' }),
    tap('record', 'held-cold', { choice: 'vacuum-held' }),
  ];
}

export function untilRunHot(): Action[] {
  return [
    ...untilFilled(),
    tap('pass', 'tools-counted', { counted: 14, of: 14 }),
    tap('start-timer', 'short-run'),
    tap('stop-timer', 'short-run'),
    tap('pour-jug', 'topped-up', { productMl: 150, waterMl: 150 }),
    tap('tick', 'topped-up'),
    tap('tick', 'run-hot'),
    tap('record', 'heater-hoses', { choice: 'both-hot' }),
    tap('record', 'radiator-side', { choice: 'cold-to-hot' }),
    tap('record', 'no-leak', { choice: 'none' }),
    tap('record', 'fan', { choice: 'not-reached', outsideC: 8, minutes: 15 }),
  ];
}

/** Keys out the same day: level and log are still owed. */
export function untilKeysOut(): Action[] {
  return [
    ...untilRunHot(),
    tap('tick', 'left-to-cool'),
    tap('tick', 'topped-up-cooled'),
    tap('record', 'strength', { value: -31, instrument: 'refractometer' }),
    tap('record', 'waste-booked', { litres: 2 }),
    tap('record', 'access-on', { leftOff: [{ item: 'Battery cover', why: 'clip broken, ordered' }] }),
    tap('tick', 'bay-clean'),
    tap('tick', 'keys-out'),
  ];
}
