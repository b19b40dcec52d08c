/** What can be said yes to as one, by template: a thermostat without its seal can't be refused. The desk changes names and prices. */
const OUTLINES: Readonly<Record<string, readonly string[]>> = {
  thermostat: ['Find the fault: log from cold, checks', 'Thermostat with its seal, refill and proof'],
  'coolant-change': ['Coolant drained, renewed and bled'],
  diagnosis: ['Find the fault: log from cold, checks'],
};

export function packageOutline(templateKey: string): readonly string[] {
  return OUTLINES[templateKey] ?? [];
}
