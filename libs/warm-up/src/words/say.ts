/** 13 min 5 s, or 40 s. */
export function sayDuration(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  if (minutes === 0) return `${whole} s`;
  return whole % 60 === 0 ? `${minutes} min` : `${minutes} min ${whole % 60} s`;
}

/** 87 °C, or 87.4 °C with one decimal. */
export function sayTemp(tempC: number, decimals = 0): string {
  return `${tempC.toFixed(decimals).replace(/^-0(\.0)?$/, '0')} °C`;
}
