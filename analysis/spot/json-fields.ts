import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';

/** An object out of a JSON text, with what it is called in sentences. */
export interface JsonObject {
  readonly what: string;
  readonly fields: Readonly<Record<string, unknown>>;
}

/** A value in a sentence: texts and numbers as in the file, cut short. */
function quoted(value: unknown): string {
  if (Array.isArray(value)) return t`a list`;
  if (typeof value === 'object' && value !== null) return t`an object`;
  const text = JSON.stringify(value) ?? t`nothing`;
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
}

/** @throws {InputError} where the value is not an object or has a field that `known` doesn't list */
export function jsonObject(value: unknown, what: string, known: readonly string[]): JsonObject {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new InputError(t`${what} is ${quoted(value)}; an object is needed.`);
  }
  const stranger = Object.keys(value).find((name) => !known.includes(name));
  if (stranger !== undefined) {
    throw new InputError(t`${what} has a field ${quoted(stranger)}; known are ${known.join(', ')}.`);
  }
  return { what, fields: value as Record<string, unknown> };
}

function wrong({ what, fields }: JsonObject, name: string, needed: string): InputError {
  return Object.hasOwn(fields, name)
    ? new InputError(t`${what}: ${name} is ${quoted(fields[name])}; ${needed} is needed.`)
    : new InputError(t`${what}: ${name} is missing; ${needed} is needed.`);
}

export function numberField(object: JsonObject, name: string): number {
  const value = object.fields[name];
  if (typeof value !== 'number' || !Number.isFinite(value)) throw wrong(object, name, t`a number`);
  return value;
}

export function booleanField(object: JsonObject, name: string): boolean {
  const value = object.fields[name];
  if (typeof value !== 'boolean') throw wrong(object, name, t`true or false`);
  return value;
}

export function textField(object: JsonObject, name: string): string {
  const value = object.fields[name];
  if (typeof value !== 'string') throw wrong(object, name, t`a text`);
  return value;
}

export function choiceField<Choice extends string>(
  object: JsonObject,
  name: string,
  choices: readonly Choice[],
): Choice {
  const found = choices.find((choice) => choice === object.fields[name]);
  if (found === undefined) throw wrong(object, name, t`one of ${choices.join(', ')}`);
  return found;
}

export function listField(object: JsonObject, name: string, itemsMost: number): readonly unknown[] {
  const value = object.fields[name];
  if (!Array.isArray(value)) throw wrong(object, name, t`a list`);
  if (value.length > itemsMost) {
    throw new InputError(
      t`${object.what}: ${name} holds ${value.length}; at most ${itemsMost} are possible.`,
    );
  }
  return value;
}

function isPoint(value: unknown): value is [number, number] {
  return Array.isArray(value) && value.length === 2 && value.every((part) => Number.isFinite(part));
}

export function pointField(object: JsonObject, name: string): readonly [number, number] {
  const value = object.fields[name];
  if (!isPoint(value)) throw wrong(object, name, t`a pair of numbers [east, north]`);
  return [value[0], value[1]];
}

export function pointsField(object: JsonObject, name: string, itemsMost: number) {
  return listField(object, name, itemsMost).map((value, at): readonly [number, number] => {
    if (isPoint(value)) return [value[0], value[1]];
    const corner = t`corner ${at + 1} of ${name}`;
    throw new InputError(
      t`${object.what}: ${corner} is ${quoted(value)}; a pair of numbers [east, north] is needed.`,
    );
  });
}
