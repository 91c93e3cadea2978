import { keep, type Storage } from '../../../state/kept.ts';
import { SHEET_TYPES_MAX } from '../../../state/sheet-text.ts';

/** Where the last customers are kept on this device. */
export const CUSTOMERS_KEY = 'desk-customers';
/** Set to `off` where nothing is to be remembered. */
export const REMEMBER_KEY = 'desk-remember';
/** No more than the last so many. */
export const CUSTOMERS_KEPT = 20;
const LABEL_LONGEST = 60;
const TYPES_KEPT = 12;

/** One customer as this device remembers them. */
export interface Customer {
  readonly id: string;
  /** Time of the first question, ms since 1970. */
  readonly at: number;
  readonly packId: string;
  /** The place as a pin has it, `postcode:SC 101`, and what was answered. */
  readonly place: string;
  readonly placeLabel: string;
  readonly answers: string | null;
  /** Typed by whoever stands at the counter. */
  readonly label: string;
  /** Ids of the types looked at, in order. */
  readonly typeIds: readonly string[];
  /** Ids of the types put on their sheet. */
  readonly sheetIds?: readonly string[];
}

/** The list with a customer first; the same customer anew takes the old one's place. */
export function withCustomer(list: readonly Customer[], customer: Customer): readonly Customer[] {
  const same = list.some(({ id }) => id === customer.id);
  const next = same
    ? list.map((one) => (one.id === customer.id ? tidy(customer) : one))
    : [tidy(customer), ...list];
  return next.slice(0, CUSTOMERS_KEPT);
}

/** The list without one. */
export function withoutCustomer(list: readonly Customer[], id: string): readonly Customer[] {
  return list.filter((one) => one.id !== id);
}

/** What the device kept; what makes no sense is left out. */
export function readCustomers(storage: Storage | null): readonly Customer[] {
  try {
    const kept: unknown = JSON.parse(storage?.getItem(CUSTOMERS_KEY) ?? '[]');
    const whole = Array.isArray(kept) ? kept.filter(isCustomer).map(tidy) : [];
    const ids = whole.map(({ id }) => id);
    return whole.filter(({ id }, at) => ids.indexOf(id) === at).slice(0, CUSTOMERS_KEPT);
  } catch {
    return [];
  }
}

/** Keeps the list, or nothing of it where it is empty. */
export function keepCustomers(storage: Storage | null, list: readonly Customer[]): void {
  keep(storage, CUSTOMERS_KEY, list.length === 0 ? null : JSON.stringify(list));
}

function tidy(customer: Customer): Customer {
  return {
    ...customer,
    label: customer.label.slice(0, LABEL_LONGEST),
    typeIds: [...new Set(customer.typeIds)].slice(-TYPES_KEPT),
    ...(customer.sheetIds && { sheetIds: customer.sheetIds.slice(0, SHEET_TYPES_MAX) }),
  };
}

function isCustomer(value: unknown): value is Customer {
  const one = value as Partial<Record<keyof Customer, unknown>> | null;
  return (
    typeof one === 'object' &&
    one !== null &&
    [one.id, one.packId, one.place, one.placeLabel, one.label].every((text) => typeof text === 'string') &&
    (one.answers === null || typeof one.answers === 'string') &&
    isTime(one.at) &&
    Array.isArray(one.typeIds) &&
    one.typeIds.every((id) => typeof id === 'string') &&
    (one.sheetIds === undefined ||
      (Array.isArray(one.sheetIds) && one.sheetIds.every((id) => typeof id === 'string')))
  );
}

/** Milliseconds that are a moment of the calendar. */
function isTime(value: unknown): boolean {
  return typeof value === 'number' && Number.isFinite(new Date(value).getTime());
}
