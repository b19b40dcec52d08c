/** What regulates the coolant. Only plain wax has one opening temperature. */
export type ThermostatKind = 'wax' | 'heated-wax' | 'twin' | 'motor-valve' | 'hybrid' | 'unknown';
