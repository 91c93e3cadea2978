/** The unit a reader sees. Everything inside the project is °C; only `web/format` turns it into what is shown. */
export type TemperatureUnit = 'F' | 'C';

/** `°F` or `°C`, as written behind a figure. */
export function unitSymbol(unit: TemperatureUnit): string {
  return `°${unit}`;
}
