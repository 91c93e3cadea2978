import stdlibGamma from '@stdlib/math-base-special-gamma';
import stdlibLogGamma from '@stdlib/math-base-special-gammaln';

/** Gamma function of a real number (infinite at 0, NaN at negative whole numbers). */
export const gamma: (x: number) => number = stdlibGamma;

/** Natural logarithm of |gamma(x)|. */
export const logGamma: (x: number) => number = stdlibLogGamma;

/** Euler's constant, minus the derivative of gamma at 1: the mean of a standard Gumbel variable. */
export const EULER_GAMMA = 0.5772156649015329;
