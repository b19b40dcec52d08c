/** What a made-up log is of. */
export interface LogShape {
  /** Where the climb ends and the level begins; null climbs towards a low balance, as with an open thermostat. */
  opensC: number | null;
  minutes?: number;
  airC?: number;
}

const HEADER = 'Time (s),Engine Coolant Temperature (°C),Vehicle Speed (km/h),Intake Air Temperature (°C),Latitude,Longitude';

/** A log as a logger writes it, a reading a second; places among its columns, as many have. */
export function logFile({ opensC, minutes = 25, airC = 15 }: LogShape): string {
  const rows = Array.from({ length: minutes * 60 }, (_, second) => {
    const climbing = opensC === null ? airC + 45 * (1 - Math.exp(-second / 380)) : airC + second * 0.1;
    const coolantC = Math.round(opensC === null ? climbing : Math.min(opensC, climbing));
    return `${second},${coolantC},${second < 40 ? 0 : 65},${airC + 3},53.34${second},-6.26`;
  });
  return [HEADER, ...rows].join('\n');
}
