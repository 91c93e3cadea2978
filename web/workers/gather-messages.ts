import type { LocatedStation } from '../../analysis/records/station.ts';
import type { PackManifest } from '../../analysis/records/pack.ts';
import type { Table } from '../../analysis/gather/table-csv.ts';
import type { BroughtFile, ExaminedStation, FoundFile, GatherProgress, PackWish } from '../gather/brought.ts';
import type { Drop, ReplyOf, RequestOf } from './task-messages.ts';

/** A pack but for its database. */
export interface MadePack {
  /** All files but the database and `pack.json`. */
  readonly files: readonly { readonly path: string; readonly content: Blob; readonly sha256: string }[];
  /** Lines of the database's tables. */
  readonly tables: Readonly<Record<Table, Blob>>;
  /** Stations whose nights are to be copied out of the joined pack's database. */
  readonly joinedStations: readonly string[];
  readonly stations: number;
  /** `pack.json` without its list of files. */
  readonly manifest: PackManifest;
}

/** What can be asked of the worker that makes packs, with its question and its answer. */
export interface GatherTasks {
  read: { question: BroughtFile; answer: FoundFile };
  forget: { question: { readonly key: number }; answer: null };
  examine: { question: { readonly stations: readonly LocatedStation[] }; answer: readonly ExaminedStation[] };
  make: { question: PackWish & { readonly id: string }; answer: MadePack };
}

/** To the worker: a question, or that nobody waits for one any more. */
export type GatherRequest = RequestOf<GatherTasks> | Drop;

/** From the worker. */
export type GatherReply = ReplyOf<GatherTasks, GatherProgress>;
