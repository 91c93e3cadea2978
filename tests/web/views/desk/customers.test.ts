import { describe, expect, it } from 'vitest';
import { STOCK_ROWS_MOST } from '../../../../analysis/answer/stock.ts';
import { CustomerList } from '../../../../web/views/desk/counter/customer-list.svelte.ts';
import {
  CUSTOMERS_KEPT,
  CUSTOMERS_KEY,
  readCustomers,
  REMEMBER_KEY,
  type Customer,
} from '../../../../web/views/desk/counter/customers.ts';
import { STOCK_KEY, StockList } from '../../../../web/views/desk/stock/stock-list.svelte.ts';

function storage(refuses = false) {
  const kept = new Map<string, string>();
  const act = <T>(what: () => T): T => {
    if (refuses) throw new DOMException('full', 'QuotaExceededError');
    return what();
  };
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => act(() => void kept.set(key, value)),
    removeItem: (key: string) => void kept.delete(key),
  };
}
const customer = (at: number): Omit<Customer, 'id'> => ({
  at,
  packId: 'sallowmere',
  place: 'postcode:SC 101',
  placeLabel: 'SC 101',
  answers: null,
  label: '',
  typeIds: [],
});

describe('the last customers', () => {
  it('are kept, the newest first, no more than the last twenty', () => {
    const kept = storage();
    const list = new CustomerList(kept);
    for (let at = 1; at <= CUSTOMERS_KEPT + 5; at++) list.add(customer(at));
    const again = new CustomerList(kept).customers;
    expect(again).toHaveLength(CUSTOMERS_KEPT);
    expect(again[0].at).toBe(CUSTOMERS_KEPT + 5);
    expect(new Set(again.map(({ id }) => id)).size).toBe(CUSTOMERS_KEPT);
  });

  it('are changed in their place, removed one by one and all', () => {
    const kept = storage();
    const list = new CustomerList(kept);
    list.add(customer(1));
    const first = list.current!;
    list.add(customer(2));
    list.update(first.id, { label: 'by the lake', typeIds: ['yuzu', 'yuzu', 'sudachi'] });
    expect(readCustomers(kept).map(({ label }) => label)).toEqual(['', 'by the lake']);
    expect(readCustomers(kept)[1].typeIds).toEqual(['yuzu', 'sudachi']);
    // Of many the last dozen looked at.
    const many = Array.from({ length: 15 }, (_, at) => `type-${at}`);
    list.update(first.id, { typeIds: many });
    expect(readCustomers(kept)[1].typeIds).toEqual(many.slice(3));
    list.remove(first.id);
    expect(readCustomers(kept)).toHaveLength(1);
    list.clear();
    expect(kept.kept.has(CUSTOMERS_KEY)).toBe(false);
  });

  it('two tabs write to one list', () => {
    const kept = storage();
    const [one, other] = [new CustomerList(kept), new CustomerList(kept)];
    one.add(customer(1));
    other.add(customer(2));
    expect(readCustomers(kept).map(({ at }) => at)).toEqual([2, 1]);
    one.reread(CUSTOMERS_KEY);
    expect(one.customers).toHaveLength(2);
    other.clear();
    one.add(customer(3));
    expect(readCustomers(kept).map(({ at }) => at)).toEqual([3]);
  });

  it('turned off nothing is written down, and what was is gone', () => {
    const kept = storage();
    const list = new CustomerList(kept);
    list.add(customer(1));
    list.remember(false);
    list.add(customer(2));
    expect([...kept.kept]).toEqual([[REMEMBER_KEY, 'off']]);
    expect(new CustomerList(kept).remembers).toBe(false);
    list.remember(true);
    list.add(customer(3));
    expect(readCustomers(kept)).toHaveLength(1);
  });

  it('what the device kept and makes no sense is left out; a storage that refuses is no error', () => {
    const kept = storage();
    for (const text of ['{', '{}', '[1, null, {"id": 3}]', '[{"id":"a","at":"x"}]']) {
      kept.setItem(CUSTOMERS_KEY, text);
      expect(readCustomers(kept)).toEqual([]);
    }
    for (const none of [storage(true), null]) {
      const list = new CustomerList(none);
      list.add(customer(1));
      list.add(customer(2));
      expect(list.customers).toHaveLength(2);
    }
  });
});

describe('the stock on the page', () => {
  const row = (typeId: string) => ({ typeId, size: '3 gal', ageYears: 2 });

  it('is kept; every change can be taken back', () => {
    const kept = storage();
    const stock = new StockList(kept);
    stock.replace([row('yuzu'), row('sudachi')]);
    stock.edit(stock.rows[0].key, { ageYears: 4 });
    stock.remove(stock.rows[1].key);
    stock.add(row('meyer_lemon'));
    expect(new StockList(kept).rows.map(({ typeId, ageYears }) => [typeId, ageYears])).toEqual([
      ['yuzu', 4],
      ['meyer_lemon', 2],
    ]);
    for (let i = 0; i < 3; i++) stock.undo();
    expect(stock.rows.map(({ typeId, ageYears }) => [typeId, ageYears])).toEqual([
      ['yuzu', 2],
      ['sudachi', 2],
    ]);
    stock.undo();
    expect([stock.rows.length, stock.canUndo, kept.kept.has(STOCK_KEY)]).toEqual([0, false, false]);
  });

  it('ends at the most that is taken, and thirty changes back', () => {
    const stock = new StockList(storage());
    stock.replace(Array.from({ length: STOCK_ROWS_MOST - 1 }, () => row('yuzu')));
    expect([stock.add(row('yuzu')), stock.add(row('yuzu')), stock.rows.length]).toEqual([
      true,
      false,
      STOCK_ROWS_MOST,
    ]);
    for (let age = 1; age <= 29; age++) stock.edit(stock.rows[0].key, { ageYears: age });
    let taken = 0;
    for (; stock.canUndo; taken++) stock.undo();
    expect([taken, stock.rows.length]).toEqual([30, STOCK_ROWS_MOST - 1]);
  });

  it('the counter tells of it alone only while there is any', () => {
    const stock = new StockList(storage());
    stock.showOnly(true);
    expect(stock.only).toBe(false);
    stock.add(row('yuzu'));
    expect(stock.only).toBe(true);
  });

  it('lines that make no sense are left out', () => {
    const kept = storage();
    kept.setItem(
      STOCK_KEY,
      JSON.stringify([
        row('yuzu'),
        row('plum'),
        { typeId: 'yuzu', size: 3, ageYears: 2 },
        { ...row('yuzu'), ageYears: -1 },
        null,
      ]),
    );
    expect(new StockList(kept).rows).toHaveLength(1);
  });
});
