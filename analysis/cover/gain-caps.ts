import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';

/** Most that covers, lights and soil gain together, 10 °F on calm nights (design 3.7); with the spot's gain it holds for all of it. */
export const CALM_CAP_C = fahrenheitDifferenceToCelsius(10);
/** The same on windy nights, 5 °F. */
export const WINDY_CAP_C = fahrenheitDifferenceToCelsius(5);
