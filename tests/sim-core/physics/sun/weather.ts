import type { WeatherYear } from '@noonloop/weather-io';

/** Invented year at 40° N on its zone's meridian: one irradiance for all hours from `first` to `last`, dark else. */
export function inventedYear(first: number, last: number, dni: number, dhi: number): WeatherYear {
  const column = (value: number) =>
    Float64Array.from({ length: 8760 }, (_, hour) => (hour % 24 >= first && hour % 24 <= last ? value : 0));
  return {
    site: { name: 'invented', latitude: 40, longitude: 15, elevation: 0, utcOffset: 1 },
    format: 'plain',
    source: 'invented',
    columns: {
      ghi: column(dni / 2 + dhi),
      dni: column(dni),
      dhi: column(dhi),
      dryBulb: new Float64Array(8760),
      dewPoint: null,
      relativeHumidity: null,
      windSpeed: null,
      pressure: null,
      skyLongwave: null,
      cloudCover: null,
      albedo: null,
      snowDepth: null,
    },
    irradianceMidpoint: 0.5,
    calendarYears: new Int16Array(8760).fill(2021),
    assumptions: [],
  };
}
