// What most words need of the weather reader and no more, as core.ts has it of the core.
export { fillGaps, readWeather, readWeatherYears, vetWeather } from '@noonloop/weather-io';
