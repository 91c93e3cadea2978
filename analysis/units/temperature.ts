const FAHRENHEIT_PER_CELSIUS = 1.8;

/** Temperature in °F to °C. For differences use {@link fahrenheitDifferenceToCelsius}. */
export function fahrenheitToCelsius(temperatureF: number): number {
  return (temperatureF - 32) / FAHRENHEIT_PER_CELSIUS;
}

/** Temperature in °C to °F. For differences use {@link celsiusDifferenceToFahrenheit}. */
export function celsiusToFahrenheit(temperatureC: number): number {
  return temperatureC * FAHRENHEIT_PER_CELSIUS + 32;
}

/** Difference of temperatures (a penalty, a gain, an error) in °F to °C. */
export function fahrenheitDifferenceToCelsius(differenceF: number): number {
  return differenceF / FAHRENHEIT_PER_CELSIUS;
}

/** Difference of temperatures (a penalty, a gain, an error) in °C to °F. */
export function celsiusDifferenceToFahrenheit(differenceC: number): number {
  return differenceC * FAHRENHEIT_PER_CELSIUS;
}

/**
 * Temperature in °C to whole hundredths of °C, the grain in which sustained cold is stored and compared.
 * Rounding both sides of a comparison to it makes "28 °F is at or below 28 °F" true however 28 °F was stored.
 */
export function toHundredths(temperatureC: number): number {
  return Math.round(temperatureC * 100);
}
