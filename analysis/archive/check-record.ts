import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';

/** Looks at a station's record line by line: that every line is a value of that station, and how many minima there are. */
export class RecordCheck {
  readonly #id: string;
  readonly #file: string;
  #line = 0;
  #tminDays = 0;

  /** @param file how the record is called in messages */
  constructor(id: string, file: string) {
    this.#id = id;
    this.#file = file;
  }

  /** Days with a minimum so far. */
  get tminDays(): number {
    return this.#tminDays;
  }

  /**
   * The next line, without its line end; the first may be the header.
   * @throws InputError when it is no value of the station, such as a page that a network puts in the record's place
   */
  take(text: string): void {
    this.#line++;
    const [station, , element] = text.replaceAll('"', '').split(',', 3);
    const header = this.#line === 1 && /^(id|station)$/i.test(station ?? '');
    if (station !== this.#id && !header && text !== '') {
      throw new InputError(
        t`${this.#file}, line ${this.#line}: "${text.slice(0, 40)}" is not a value of station ${this.#id}`,
      );
    }
    if (element === 'TMIN') this.#tminDays++;
  }
}
