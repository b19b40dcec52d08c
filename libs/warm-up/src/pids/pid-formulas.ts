/** A channel of service 01 in SAE J1979 / ISO 15031-5: how its bytes become a figure. */
export interface PidFormula {
  pid: number;
  name: string;
  unit: '°C' | 'km/h' | '1/min' | '%' | 'g/s' | 's';
  bytes: 1 | 2;
  /** From the bytes A and B. */
  value: (a: number, b: number) => number;
}

/** 04 to 10 as published; 1F and 46 from memory, 46 confirmed by its use in published logs. */
export const PID_FORMULAS: readonly PidFormula[] = [
  { pid: 0x04, name: 'engine load', unit: '%', bytes: 1, value: (a) => (a * 100) / 255 },
  { pid: 0x05, name: 'coolant temperature', unit: '°C', bytes: 1, value: (a) => a - 40 },
  { pid: 0x0c, name: 'engine speed', unit: '1/min', bytes: 2, value: (a, b) => (256 * a + b) / 4 },
  { pid: 0x0d, name: 'road speed', unit: 'km/h', bytes: 1, value: (a) => a },
  { pid: 0x0f, name: 'intake air temperature', unit: '°C', bytes: 1, value: (a) => a - 40 },
  { pid: 0x10, name: 'air flow', unit: 'g/s', bytes: 2, value: (a, b) => (256 * a + b) / 100 },
  { pid: 0x1f, name: 'time since engine start', unit: 's', bytes: 2, value: (a, b) => 256 * a + b },
  { pid: 0x46, name: 'outside air temperature', unit: '°C', bytes: 1, value: (a) => a - 40 },
];
