import { InputError } from '../../analysis/records/input-error.ts';

/** Wrong use of a command: unknown option, missing argument. Exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/**
 * Runs a command and turns its outcome into an exit code: 0 done, 1 bad input (one sentence on stderr), 2 wrong use.
 * Anything else is a fault of ours and keeps its stack.
 */
export async function runCommand(name: string, body: () => Promise<void>): Promise<void> {
  // A reader that closes early (`| head`) has what it wanted.
  process.stdout.on('error', (error) => {
    if (!isClosedPipe(error)) throw error;
  });
  try {
    await body();
  } catch (error) {
    if (error instanceof UsageError || isParseArgsError(error)) {
      process.stderr.write(`${name}: ${error.message}; see "npm run ${name} -- --help"\n`);
      process.exitCode = 2;
    } else if (error instanceof InputError || isFileError(error)) {
      process.stderr.write(`${name}: ${error instanceof InputError ? error.message : fileSentence(error)}\n`);
      process.exitCode = 1;
    } else {
      throw error;
    }
  }
}

/** Writes results to stdout and waits until they are taken, so that a pipe gets all of them. */
export async function print(text: string): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    process.stdout.write(text, (error) => (error && !isClosedPipe(error) ? reject(error) : resolve()));
  });
}

/** One line of progress on stderr. */
export function tell(text: string): void {
  process.stderr.write(`${text}\n`);
}

function isParseArgsError(error: unknown): error is Error {
  return error instanceof Error && String((error as NodeJS.ErrnoException).code).startsWith('ERR_PARSE_ARGS');
}

interface FileError extends Error {
  readonly code: string;
  readonly path: string;
}

function isFileError(error: unknown): error is FileError {
  return error instanceof Error && 'path' in error && 'code' in error && typeof error.path === 'string';
}

function fileSentence(error: FileError): string {
  const reasons: Record<string, string> = {
    ENOENT: 'does not exist',
    EACCES: 'may not be read or written here',
    EISDIR: 'is a folder, not a file',
    ENOTDIR: 'is not a folder',
    ENOSPC: 'does not fit on the disk',
  };
  return `${error.path} ${reasons[error.code] ?? `can't be used (${error.code})`}`;
}

function isClosedPipe(error: Error): boolean {
  return (error as NodeJS.ErrnoException).code === 'EPIPE';
}
