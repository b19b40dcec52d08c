/** What someone saw on the dashboard's gauge or coloured lamp. */
export interface GaugeObservation {
  reading: 'stays-cold' | 'below-middle' | 'middle' | 'hot';
  minutesDriven: number;
  outsideC?: number;
}

export interface GaugeFinding {
  supports: 'never-warms' | 'overheats' | 'nothing';
  reasons: string[];
  advice: string[];
  cautions: string[];
}

const LONG_ENOUGH_MIN = 20;
const VERY_COLD_C = -7;
const LOG_INSTEAD = 'Take a log from a cold start with a tester: only that shows at which temperature the thermostat opens.';

/**
 * Weighs a look at the dashboard gauge. Gauges are damped: many show the middle from 75 to 105 °C, so they can support 'never warms' and
 * nothing finer (common practice, no source).
 *
 * @example gaugeObservation({ reading: 'stays-cold', minutesDriven: 30, outsideC: 12 }).supports // 'never-warms'
 */
export function gaugeObservation({ reading, minutesDriven, outsideC }: GaugeObservation): GaugeFinding {
  if (reading === 'hot') {
    return {
      supports: 'overheats',
      reasons: ['The gauge in the red means overheating, whatever the cause: level, pump, fan, thermostat or head gasket.'],
      advice: ['Let it cool down, check the level when cold, then look for the cause.'],
      cautions: ['Stop the engine and do not drive on. Never open the cap while hot.'],
    };
  }
  const stayedLow = reading === 'stays-cold' || reading === 'below-middle';
  if (stayedLow && minutesDriven < LONG_ENOUGH_MIN)
    return nothing(`After ${minutesDriven} minutes a low gauge is normal; ${LONG_ENOUGH_MIN} minutes of driving are needed.`);
  if (stayedLow && outsideC !== undefined && outsideC < VERY_COLD_C)
    return nothing(`At ${outsideC} °C outside a sound engine may stay low too.`);
  if (stayedLow) {
    return {
      supports: 'never-warms',
      reasons: [
        `After ${minutesDriven} minutes of driving the gauge has not reached its usual place: the engine does not get warm, or the gauge or its sensor reads low.`,
      ],
      advice: [LOG_INSTEAD],
      cautions: [],
    };
  }
  return nothing('The gauge in its middle tells only that the engine is somewhere between about 75 and 105 °C.');
}

function nothing(reason: string): GaugeFinding {
  return { supports: 'nothing', reasons: [reason], advice: [LOG_INSTEAD], cautions: [] };
}
