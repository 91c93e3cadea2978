import { describe, expect, it } from 'vitest';
import { drawStream } from '../../../analysis/extremes/draw-stream.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';

describe('the random part of draws', () => {
  it('is what a fresh generator gives, in the order of the draws', () => {
    const { normals, logExponentials, after } = drawStream(7, 5, 4);
    const random = seededRandom(7);
    for (let b = 0; b < 5; b++) {
      expect(normals[b]).toBe(random.normal());
      let exponential = 0;
      for (let i = 0; i < 4; i++) {
        exponential -= Math.log(random.uniform()) / (4 - i);
        expect(logExponentials[b * 4 + i]).toBe(Math.log(exponential));
      }
    }
    const goesOn = after();
    for (let i = 0; i < 9; i++) expect(goesOn.normal()).toBe(random.normal());
  });

  it('is kept, and what comes after it starts at the same place each time', () => {
    const stream = drawStream(11, 3, 6);
    expect(drawStream(11, 3, 6)).toBe(stream);
    const [one, other] = [stream.after(), stream.after()];
    const first = [one.uniform(), one.normal(), one.index(100)];
    expect([other.uniform(), other.normal(), other.index(100)]).toEqual(first);
  });

  it('differs by seed, and holds ascending exponentials with the mean of a standard one', () => {
    const { logExponentials } = drawStream(3, 2000, 10);
    expect(drawStream(4, 2000, 10).logExponentials[0]).not.toBe(logExponentials[0]);
    const exponentials = logExponentials.map(Math.exp);
    for (let b = 0; b < 2000; b++)
      for (let i = 1; i < 10; i++)
        expect(exponentials[10 * b + i]).toBeGreaterThan(exponentials[10 * b + i - 1]);
    // Standard error 1/sqrt(20,000) = 0.007.
    expect(exponentials.reduce((sum, value) => sum + value, 0) / 20_000).toBeCloseTo(1, 1);
  });
});

describe('a copied generator', () => {
  it('goes on as the first does, the second of two normals made at once included', () => {
    const random = seededRandom(5);
    random.normal();
    const copy = random.copy();
    const mine = [random.normal(), random.uniform(), random.normal()];
    expect([copy.normal(), copy.uniform(), copy.normal()]).toEqual(mine);
  });
});
