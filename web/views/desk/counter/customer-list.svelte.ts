import { keep, readKept, type Storage } from '../../../state/kept.ts';
import {
  CUSTOMERS_KEY,
  keepCustomers,
  readCustomers,
  REMEMBER_KEY,
  withCustomer,
  withoutCustomer,
  type Customer,
} from './customers.ts';

/** The last customers on this device. Other tabs write to the same list, so it is read anew before each change. */
export class CustomerList {
  #customers = $state.raw<readonly Customer[]>([]);
  #remembers = $state(true);
  #currentId = $state<string | null>(null);
  /** What was written last is there: then another tab may have cleared it since. */
  #isKept = true;

  constructor(private readonly storage: Storage | null) {
    this.#remembers = readKept(storage, REMEMBER_KEY, ['off']) === null;
    if (this.#remembers) this.#customers = readCustomers(storage);
  }

  get customers(): readonly Customer[] {
    return this.#customers;
  }
  get remembers(): boolean {
    return this.#remembers;
  }
  /** Whom the counter shows now. */
  get current(): Customer | null {
    return this.#customers.find(({ id }) => id === this.#currentId) ?? null;
  }

  /** A customer who just came. */
  add(customer: Omit<Customer, 'id'>): void {
    if (!this.#remembers) return;
    const id = `${customer.at.toString(36)}-${Math.floor(Math.random() * 1e9).toString(36)}`;
    this.#currentId = id;
    this.#change((list) => withCustomer(list, { ...customer, id }));
  }

  /** Something new about the one who stands here. */
  update(id: string, change: Partial<Pick<Customer, 'answers' | 'label' | 'typeIds' | 'sheetIds'>>): void {
    if (!this.#remembers) return;
    this.#change((list) => {
      const known = list.find((one) => one.id === id);
      return known ? withCustomer(list, { ...known, ...change }) : list;
    });
  }

  /** Back to one of them. */
  reopen(id: string): void {
    this.#currentId = id;
  }

  remove(id: string): void {
    this.#change((list) => withoutCustomer(list, id));
  }

  clear(): void {
    this.#change(() => []);
  }

  /** Turned off, the list goes as well. */
  remember(on: boolean): void {
    this.#remembers = on;
    keep(this.storage, REMEMBER_KEY, on ? null : 'off');
    if (!on) this.clear();
  }

  /** Another tab changed the list. */
  reread(key: string | null): void {
    if (key === null || key === CUSTOMERS_KEY) this.#customers = readCustomers(this.storage);
  }

  #change(by: (list: readonly Customer[]) => readonly Customer[]): void {
    // Where nothing can be kept the list of this visit is all there is.
    this.#customers = by(this.#isKept ? readCustomers(this.storage) : this.#customers);
    keepCustomers(this.storage, this.#customers);
    this.#isKept = readCustomers(this.storage).length === this.#customers.length;
  }
}
