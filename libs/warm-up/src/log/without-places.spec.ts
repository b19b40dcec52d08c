import { describe, expect, it } from '@jest/globals';
import { readLog } from './read-log.ts';
import { withoutPlaces } from './without-places.ts';

const climb = (row: (second: number, tempC: number) => string): string =>
  Array.from({ length: 120 }, (_, second) => row(second, 20 + Math.floor(second / 3))).join('\n');

describe('a log that is kept', () => {
  it.each([
    ['wide', `time_s,Latitude,coolant_c,Longitude\n${climb((second, tempC) => `${second},51.5${second},${tempC},-0.127`)}`],
    ['quoted', `"Time (s)";"GPS Lat";"Coolant (°C)"\n${climb((second, tempC) => `"${second}";"51.5";"${tempC}"`)}`],
    [
      'long',
      `seconds,pid,value,units\n${climb((s, t) => `${s},Coolant Temp,${t},°C\n${s},Latitude,51.5${s},deg\n${s},Longitude,-0.127,deg`)}`,
    ],
    ['with lines above', `Trip from 51.5 to -0.127\n\ntime_s,lat,coolant_c\n${climb((second, tempC) => `${second},51.5,${tempC}`)}`],
    ['torn by its own commas', `time_s,coolant_c,lat\n${climb((s, t) => `${s},${t},51.5`)}\n120,60,51,5,0,127`],
  ])('holds no place and reads the same: %s', (_, text) => {
    const kept = withoutPlaces(text);
    expect(kept).not.toMatch(/51[.,]5|0\.127/);
    expect(kept.split('\n')).toHaveLength(text.split('\n').length);
    const [before, after] = [readLog(text), readLog(kept)];
    expect(after).toMatchObject({ ok: true, samples: before.ok ? before.samples : [], shape: before.shape });
  });

  it('stays as it is where it says no place', () => {
    const text = `time_s,coolant_c,GPS Speed (km/h)\n${climb((second, tempC) => `${second},${tempC},40`)}`;
    expect(withoutPlaces(text)).toBe(text);
  });

  it('is nothing where it is no table', () => {
    expect(withoutPlaces('hello')).toBe('');
  });
});
