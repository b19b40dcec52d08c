import type { Action } from '#libs/checklist';

type Make = (kind: Action['kind'], step: string, value?: unknown) => Action;

/** A whole thermostat job on its card, from the key to the next morning, in the order of the work. */
export function thermostatCard(make: Make, { variant }: { variant: string }): Action[] {
  return [
    make('tick', 'keys-tagged'),
    make('record', 'odometer', { value: 86_412 }),
    make('record', 'thermostat-kind', { choice: 'wax' }),
    make('pass', 'measured-cold', { tempC: 22, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' }),
    make('record', 'level-on-arrival', { belowMarkMl: 400 }),
    make('tick', 'tray'),
    make('tick', 'cap-off'),
    make('record', 'drained', { litres: 4.8 }),
    make('record', 'kept', { litres: 0 }),
    make('tick', 'housing-off'),
    make('tick', 'removed-part'),
    make('pass', 'variant', { variant, basis: 'readings' }),
    make('tick', 'recess-clean'),
    make('tick', 'fitted'),
    make('pass', 'torqued', { setAt: 10, unit: 'Nm', tightened: 3, of: 3, inSequence: true, document: 'Tamber TK14 manual', page: '19-4' }),
    make('tick', 'hoses-on'),
    make('pour-jug', 'first-fill', { productMl: 2000, waterMl: 0 }),
    make('pour-jug', 'first-fill', { productMl: 500, waterMl: 1500 }),
    make('tick', 'first-fill'),
    make('record', 'bled', { choice: 'open-cap' }),
    make('record', 'held-cold', { choice: 'pressure-held' }),
    make('pass', 'tools-counted', { counted: 7, of: 7 }),
    make('tick', 'short-run'),
    make('pour-jug', 'topped-up', { productMl: 0, waterMl: 800 }),
    make('tick', 'topped-up'),
    make('tick', 'run-hot'),
    make('pass', 'heater-hoses', { choice: 'both-hot' }),
    make('pass', 'radiator-side', { choice: 'cold-to-hot' }),
    make('pass', 'no-leak', { choice: 'none' }),
    make('record', 'fan', { choice: 'seen' }),
    make('tick', 'left-to-cool'),
    make('record', 'strength', { value: -27, instrument: 'refractometer' }),
    make('record', 'waste-booked', { litres: 4.8 }),
    make('record', 'access-on', { items: [] }),
    make('tick', 'bay-clean'),
    make('tick', 'keys-out'),
  ];
}
