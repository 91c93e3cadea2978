import { t } from '../../../analysis/language/t.ts';
import { NO_CHOICES, type ReadingChoices } from '../../../analysis/spot/thermometer/calibrate.ts';
import type { Mend } from '../../../analysis/spot/thermometer/mend.ts';
import { readReadings, type ReadReadings } from '../../../analysis/spot/thermometer/read-readings.ts';
import { InputError, UnclearError } from '../../../analysis/records/input-error.ts';
import type { Storage } from '../../state/kept.ts';
import { keepReadings, readKeptReadings, type KeptReadings, type OwnStation } from './kept-readings.ts';

/** What readings are called when they were typed or pasted, as the browser keeps it. */
const TYPED = 'The text';
/** A logger's export of some winters; more isn't a list of minima. */
const TEXT_MAX = 4_000_000;

interface Parsed {
  readonly read: ReadReadings | null;
  readonly problem: string | null;
  readonly asksForOrder: boolean;
}
const NO_PROBLEM = { problem: null, asksForOrder: false } as const;

function saidName(name: string): string {
  return name === TYPED ? t`The text` : name;
}

/** The readings, what the reader decided about them, and the station file beside them; kept in the browser. */
export class ThermometerState {
  #text = $state('');
  #name = $state(TYPED);
  #choices = $state.raw<ReadingChoices>(NO_CHOICES);
  #own = $state.raw<OwnStation | null>(null);
  /** What stood here before a file or a clearing took its place. */
  #former = $state.raw<KeptReadings | null>(null);
  #fileProblem = $state<string | null>(null);

  constructor(private readonly storage: Storage | null) {
    const kept = readKeptReadings(storage);
    if (kept) this.#take(kept);
  }

  get text(): string {
    return this.#text;
  }
  get choices(): ReadingChoices {
    return this.#choices;
  }
  get own(): OwnStation | null {
    return this.#own;
  }
  get canPutBack(): boolean {
    return this.#former !== null;
  }
  get fileProblem(): string | null {
    return this.#fileProblem;
  }

  readonly #parsed = $derived.by((): Parsed => {
    if (this.#text.trim() === '') return { read: null, ...NO_PROBLEM };
    try {
      return { read: readReadings(this.#text, saidName(this.#name), this.#choices.order), ...NO_PROBLEM };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      const asksForOrder = error instanceof UnclearError && error.asks === 'dateOrder';
      return { read: null, problem: error.message, asksForOrder };
    }
  });
  get read(): ReadReadings | null {
    return this.#parsed.read;
  }
  /** Why the text can't be read, one sentence. */
  get problem(): string | null {
    return this.#parsed.problem;
  }

  /** Whether it can't be read because some dates have the day first and others the month. */
  get asksForOrder(): boolean {
    return this.#parsed.asksForOrder;
  }

  /** The text as typed. Lines that were left out may have moved, so that mend is taken back. */
  type(text: string): void {
    this.#text = text;
    this.#fileProblem = null;
    const mends = this.#choices.mends.filter(({ kind }) => kind !== 'leave-out');
    if (mends.length < this.#choices.mends.length) this.#choices = { ...this.#choices, mends };
    this.#keep();
  }

  /** A whole new text, from a file or made up; what was there can be put back. */
  replace(text: string, name = TYPED): void {
    if (text.length > TEXT_MAX) {
      this.#fileProblem = t`${saidName(name)} has ${Math.round(text.length / 1e6)} million characters; the limit for readings is ${TEXT_MAX / 1e6} million.`;
      return;
    }
    this.#former = this.#text === '' ? this.#former : this.#whole();
    this.#fileProblem = null;
    this.#text = text;
    this.#name = name;
    this.#choices = NO_CHOICES;
    this.#keep();
  }

  putBack(): void {
    if (!this.#former) return;
    const former = this.#former;
    this.#former = this.#text === '' ? null : this.#whole();
    this.#take(former);
    this.#keep();
  }

  decide(change: Partial<ReadingChoices>): void {
    this.#choices = { ...this.#choices, ...change };
    this.#keep();
  }

  mend(mend: Mend): void {
    this.decide({ mends: [...this.#choices.mends, mend] });
  }

  unmend(index: number): void {
    this.decide({ mends: this.#choices.mends.filter((_, at) => at !== index) });
  }

  compareWith(own: OwnStation | null): void {
    this.#own = own;
    this.#keep();
  }

  #whole(): KeptReadings {
    return { text: this.#text, name: this.#name, choices: this.#choices, own: this.#own };
  }
  #take({ text, name, choices, own }: KeptReadings): void {
    this.#text = text;
    this.#name = name;
    this.#choices = choices;
    this.#own = own;
  }
  #keep(): void {
    keepReadings(this.storage, this.#whole());
  }
}
