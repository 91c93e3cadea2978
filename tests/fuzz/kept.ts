import fc from 'fast-check';

import { STOCK_AGE_MOST } from '../../analysis/answer/stock.ts';
import { findType } from '../../analysis/tree/catalogue.ts';
import { defaultUnit } from '../../web/state/default-unit.ts';
import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { yardProblems } from '../../analysis/spot/check-yard.ts';
import { chooseLanguage, LANGUAGES } from '../../web/language/languages.ts';
import { readTrees, TREES_MAX, tonightTrees, treeName } from '../../web/views/cover/tonight-trees.ts';
import { CUSTOMERS_KEPT, keepCustomers, readCustomers } from '../../web/views/desk/counter/customers.ts';
import { StockList } from '../../web/views/desk/stock/stock-list.svelte.ts';
import { keepBroken, keptBroken } from '../../web/views/spot/broken-yard.ts';
import { keepReadings, readKeptReadings } from '../../web/views/spot/kept-readings.ts';
import { NO_CHOICES } from '../../analysis/spot/thermometer/calibrate.ts';
import type { Storage } from '../../web/state/kept.ts';
import { BARE_TEXTS } from '../analysis/answer/bare-texts.ts';
import { anyText, damagedJson, damagedJsonText } from './damage.ts';
import { must, property, type ReaderProperty } from './reader-property.ts';

/** A browser's storage in which every key holds the same text. */
const holding = (text: string | null): Storage => ({
  getItem: () => text,
  setItem: () => {},
  removeItem: () => {},
});
const refusing: Storage = {
  getItem: () => { throw new DOMException('refused', 'SecurityError'); },
  setItem: () => { throw new DOMException('full', 'QuotaExceededError'); },
  removeItem: () => { throw new DOMException('refused', 'SecurityError'); },
}; // prettier-ignore

const CUSTOMER = {
  id: 'a',
  at: 1.7e12,
  packId: 'p',
  place: 'postcode:SC 101',
  placeLabel: 'SC 101',
  answers: 'home-no',
  label: 'x',
  typeIds: ['meyer_lemon'],
};
const TREE = {
  typeId: 'meyer_lemon',
  ageYears: 3,
  container: true,
  fruitLoad: false,
  spot: 'chosen',
  cover: 'chosen',
};
const STOCK = { typeId: 'meyer_lemon', size: '3 gal', ageYears: 2 };
const READINGS = {
  text: '2024-01-05,28\n', name: 'diary.csv', choices: NO_CHOICES,
  own: { name: 'Z', awayKm: 3, notes: ['n'], nights: { day: [1, 2], winter: [2001, 2001], kind: [0, 1], minimum: [-20, 5] } },
}; // prettier-ignore
const YARD = READY_YARDS[0].yard;

const texts = (value: unknown): fc.Arbitrary<string> =>
  fc.oneof({ weight: 6, arbitrary: damagedJsonText(value) }, anyText);

export const KEPT: readonly ReaderProperty[] = [
  property('kept customers: only whole ones, at most so many', texts([CUSTOMER, CUSTOMER]), (text) => {
    const customers = readCustomers(holding(text));
    must(new Set(customers.map(({ id }) => id)).size === customers.length, 'a customer twice');
    must(customers.length <= CUSTOMERS_KEPT, `${customers.length} customers`);
    for (const { label, place, placeLabel, typeIds, at, answers } of customers) {
      must(
        [label, place, placeLabel, ...typeIds, answers ?? ''].every((one) => typeof one === 'string'),
        'a customer in parts',
      );
      must(label.length <= 60 && Number.isFinite(new Date(at).getTime()), `${label} at ${at}`);
    }
    keepCustomers(refusing, customers);
    readCustomers(refusing);
  }),
  property('kept trees: only those the page could have made', texts([TREE, TREE]), (text) => {
    const trees = readTrees(holding(text));
    must(trees.length <= TREES_MAX && trees.every(({ typeId }) => findType(typeId)), 'a tree of no kind');
    must(
      trees.every((tree) => treeName(tree).length < 200),
      'a tree without a name',
    );
    const tree = {
      ageYears: null,
      condition: 'healthy',
      fruitLoad: false,
      container: false,
      notHardened: false,
      rootstock: 'unknown',
    };
    tonightTrees(trees, {
      bareTexts: BARE_TEXTS,
      ids: [],
      tree,
    } as never);
    readTrees(refusing);
  }),
  property('kept stock: only lines of the catalogue', texts([STOCK, STOCK]), (text) => {
    for (const { typeId, size, ageYears } of new StockList(holding(text)).rows)
      must(
        findType(typeId) !== undefined &&
          size.length <= 40 &&
          (ageYears === null || (ageYears >= 1 && ageYears <= STOCK_AGE_MOST)),
        'a line that is none',
      );
    must(new StockList(refusing).rows.length === 0, 'something out of nothing');
  }),
  property('kept readings: whole, or none', texts(READINGS), (text) => {
    const kept = readKeptReadings(holding(text));
    keepReadings(refusing, kept ?? { text: 'a', name: 'b', choices: NO_CHOICES, own: null });
    must(readKeptReadings(refusing) === null, 'something out of nothing');
    if (!kept) return;
    must(typeof kept.name === 'string' && typeof kept.text === 'string', 'no name');
    must(
      JSON.stringify(Object.keys(kept.choices).sort()) === JSON.stringify(Object.keys(NO_CHOICES).sort()),
      'choices that are none',
    );
    if (!kept.own) return;
    const { nights, name, notes, awayKm } = kept.own;
    must(
      typeof name === 'string' && notes.every((note) => typeof note === 'string'),
      'a station without a name',
    );
    must(awayKm === null || (Number.isFinite(awayKm) && awayKm >= 0), `${awayKm} km`);
    const lengths = [nights.day, nights.winter, nights.kind, nights.sustained[0]!, nights.coolHours].map(
      ({ length }) => length,
    );
    must(new Set(lengths).size === 1 && lengths[0] > 0, `nights of ${lengths.join(', ')}`);
  }),
  property(
    'kept yards in the middle of an edit: can be judged, or none',
    fc.tuple(damagedJson({ goodText: 'x', broken: YARD })),
    ([value]) => {
      const yard = keptBroken(holding(JSON.stringify(value) ?? ''), 'x');
      if (yard)
        must(
          yardProblems(yard).every(({ sentence }) => sentence !== ''),
          'a problem without words',
        );
      must(keptBroken(refusing, 'x') === null, 'something out of nothing');
      keepBroken(refusing, 'x', yard);
    },
  ),
  property('kept unit and language: one of those there are', anyText, (text) => {
    must(['F', 'C'].includes(defaultUnit(['en-US'], holding(text))), 'a unit there is not');
    must(
      LANGUAGES.includes(
        chooseLanguage(
          `?lang=${encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'))}`,
          holding(text),
          [text],
        ),
      ),
      'a language there is not',
    );
    must(['F', 'C'].includes(defaultUnit([text], refusing)), 'a unit there is not');
  }),
];
