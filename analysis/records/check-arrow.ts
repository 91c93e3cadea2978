/** Most columns, and most entries of any list in a message: far more than a winters tile has. */
const ENTRIES_MOST = 1000;
/** Kinds of message, as Arrow's `Message.fbs` numbers them. */
const SCHEMA = 1;
const DICTIONARY = 2;
const ROWS = 3;
/** Bytes of an entry of `nodes` (length, nulls) and of `buffers` (offset, length). */
const PAIR_BYTES = 16;

/**
 * Refuses a stream of flat columns (Arrow's IPC format, sections "Encapsulated message format" and `Message.fbs`) that tells
 * of more entries or rows than its bytes can hold. Arrow's own reader believes any number: one turned bit makes it fill the
 * memory.
 * @throws Error (RangeError where it leads outside the bytes)
 */
export function checkArrowStream(bytes: Uint8Array): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at < bytes.length;) {
    if (view.getInt32(at, true) !== -1) throw new Error('no message begins here');
    const length = view.getInt32(at + 4, true);
    if (length === 0) return;
    const from = at + 8;
    if (length < 0 || from + length > bytes.length) throw new RangeError('a message is cut');
    const bodyBytes = checkMessage(new Parts(bytes.subarray(from, from + length)));
    at = from + length + bodyBytes;
    if (bodyBytes < 0 || at > bytes.length) throw new RangeError('the body of a message is cut');
  }
}

/** @returns how many bytes of body follow the message */
function checkMessage(parts: Parts): number {
  const message = parts.follow(0);
  const kind = parts.field(message, 1);
  const header = parts.table(message, 2);
  const bodyBytes = parts.long(parts.field(message, 3));
  if (kind === 0 || header === 0) throw new Error('a message without a header');
  const type = parts.view.getUint8(kind);
  if (type === SCHEMA) checkSchema(parts, header);
  else if (type === ROWS) checkBatch(parts, header, bodyBytes);
  else if (type === DICTIONARY) checkBatch(parts, parts.table(header, 1), bodyBytes);
  else throw new Error(`a message of kind ${type}`);
  return bodyBytes;
}

function checkSchema(parts: Parts, schema: number): void {
  const fields = parts.list(schema, 1);
  parts.none(schema, 2);
  for (let i = 0; i < fields.count; i++) {
    const field = parts.follow(fields.from + 4 * i);
    // Columns within columns and remarks: ours have none.
    parts.none(field, 5);
    parts.none(field, 6);
  }
}

/** Every row takes a byte at least, for it is in a column of whole numbers. */
function checkBatch(parts: Parts, batch: number, bodyBytes: number): void {
  const atMost = (value: number): void => {
    if (value < 0 || value > bodyBytes) throw new RangeError(`${value} rows in ${bodyBytes} bytes`);
  };
  atMost(parts.long(parts.field(batch, 0)));
  const nodes = parts.list(batch, 1);
  for (let i = 0; i < nodes.count; i++) atMost(parts.long(nodes.from + PAIR_BYTES * i));
  const buffers = parts.list(batch, 2);
  for (let i = 0; i < buffers.count; i++) {
    const [offset, length] = [0, 8].map((part) => parts.long(buffers.from + PAIR_BYTES * i + part));
    atMost(offset);
    atMost(length);
    atMost(offset + length);
  }
}

/** Parts of a message, laid out as FlatBuffers lays them out; 0 stands for a part that is left out. */
class Parts {
  readonly view: DataView;

  constructor(bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** Where what is pointed to from a place begins. */
  follow(at: number): number {
    return at + this.view.getInt32(at, true);
  }

  /** Where field `index` of a table stands. */
  field(table: number, index: number): number {
    const places = table - this.view.getInt32(table, true);
    const slot = 4 + 2 * index;
    const offset = slot < this.view.getInt16(places, true) ? this.view.getInt16(places + slot, true) : 0;
    return offset === 0 ? 0 : table + offset;
  }

  table(table: number, index: number): number {
    const at = this.field(table, index);
    return at === 0 ? 0 : this.follow(at);
  }

  list(table: number, index: number): { readonly count: number; readonly from: number } {
    const at = this.table(table, index);
    const count = at === 0 ? 0 : this.view.getInt32(at, true);
    if (count < 0 || count > ENTRIES_MOST) throw new RangeError(`${count} entries`);
    return { count, from: at + 4 };
  }

  none(table: number, index: number): void {
    if (this.list(table, index).count > 0) throw new Error('something that a winters tile has not');
  }

  /** A whole number of 64 bits; 0 where it is left out. */
  long(at: number): number {
    return at === 0 ? 0 : Number(this.view.getBigInt64(at, true));
  }
}
