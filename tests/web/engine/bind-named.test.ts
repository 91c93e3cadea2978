import { describe, expect, it } from 'vitest';
import { bindNamed } from '../../../web/engine/bind-named.ts';

describe('names of parameters', () => {
  it('become places in the order they first appear, and repeat', () => {
    expect(bindNamed('select $b, $a, $b', { a: 1, b: 'two' })).toEqual({
      sql: 'select $1, $2, $1',
      parameters: ['two', 1],
    });
  });
  it('are left alone in text and quoted names, and comments go', () => {
    const sql = `-- needs $x\nselect '$a it''s $b', "$c" /* $d */ from t where x = $a`;
    expect(bindNamed(sql, { a: 1 }).sql).toBe(`select '$a it''s $b', "$c"   from t where x = $1`);
  });
  it('must all have a value, and values a parameter', () => {
    expect(() => bindNamed('select $a', {})).toThrow('The statement needs a value for $a.');
    expect(() => bindNamed('select 1', { a: 1 })).toThrow('The statement has no parameter $a.');
  });
});
