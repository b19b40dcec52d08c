const DAY_MIN = 1440;

/**
 * Writes minutes since midnight as a clock shows them; later days start again at midnight.
 *
 * @example formatClock(580); // '09:40'
 * @example formatClock(1500); // '01:00'
 */
export function formatClock(clockMin: number): string {
  const whole = Math.round(clockMin);
  const ofDay = ((whole % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return `${String(Math.floor(ofDay / 60)).padStart(2, '0')}:${String(ofDay % 60).padStart(2, '0')}`;
}
